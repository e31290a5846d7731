"""Pages as PDF: the same bytes each time, at full size, with all that the page says and nothing from outside it."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from small_sheets import CAUTION, LEADS, NOTE, document

from rigc.output import html
from rigc.output.extras import pdf
from rigc.output.extras.missing_extra import MissingExtra
from rigc.output.layout import Layout
from rigc.reports.content import Drawing
from rigc.reports.drawings.shapes import COLOURS, Label, Line


def tool(name: str) -> str:
    found = shutil.which(name)
    if found is None:
        pytest.skip(f"{name} is not installed")
    return found


def text_of(data: bytes, folder: Path) -> str:
    (folder / "page.pdf").write_bytes(data)
    done = subprocess.run([tool("pdftotext"), folder / "page.pdf", "-"], capture_output=True, check=True)
    return done.stdout.decode()


def test_it_says_what_the_page_says(tmp_path: Path) -> None:
    text = text_of(pdf.render(html.render(document(CAUTION, LEADS, NOTE))), tmp_path)
    for said in ("cable list", "Leads", "L01", "153", "The long lead goes under the carpet.", "page 1 of 1"):
        assert said in text


@pytest.mark.parametrize(("paper", "size"), [("a4", (595.3, 841.9)), ("letter", (612.0, 792.0))])
def test_the_paper_is_the_one_asked_for(paper: str, size: tuple[float, float], tmp_path: Path) -> None:
    """A4 is 210 × 297 mm, Letter 8.5 × 11 in; a point is 1/72 in."""
    (tmp_path / "page.pdf").write_bytes(pdf.render(html.render(document(LEADS), Layout(paper))))
    told = subprocess.run([tool("pdfinfo"), tmp_path / "page.pdf"], capture_output=True, check=True).stdout.decode()
    found = re.search(r"Page size: +([\d.]+) x ([\d.]+) pts", told)
    assert found is not None
    assert (float(found[1]), float(found[2])) == pytest.approx(size, abs=0.1)


def test_the_same_page_gives_the_same_bytes() -> None:
    page = html.render(document(LEADS))
    assert pdf.render(page) == pdf.render(page)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_line_of_100_mm_is_100_mm_long(paper: str, tmp_path: Path) -> None:
    """Counted in dots of 1/300 in, which are 0.085 mm wide."""
    drawing = Drawing("ruler", "Ruler", "a line", 150, 40, (Line(10, 20, 110, 20, "vermillion", width_mm=0.5),))
    (tmp_path / "page.pdf").write_bytes(pdf.render(html.render(document(drawing), Layout(paper))))
    picture = [tool("pdftoppm"), "-r", "300", "-singlefile", str(tmp_path / "page.pdf"), str(tmp_path / "page")]
    subprocess.run(picture, check=True)
    ink = bytes.fromhex(COLOURS["vermillion"][1:])
    runs = re.findall(b"(?:" + re.escape(ink) + b")+", (tmp_path / "page.ppm").read_bytes())
    assert max(map(len, runs)) / 3 / 300 * 25.4 == pytest.approx(100, abs=0.1)


def test_letters_with_an_edge_stand_on_it(tmp_path: Path) -> None:
    """A name in a drawing has a white edge, so that it can be read over a line; laid over the letters it would hide them."""
    dark = {}
    for text in ("MMMM", ""):
        drawing = Drawing("name", "Name", "a name", 60, 30, (Label(5, 15, text, size_mm=8, halo=True),))
        (tmp_path / "page.pdf").write_bytes(pdf.render(html.render(document(drawing))))
        picture = [
            tool("pdftoppm"),
            "-r",
            "72",
            "-gray",
            "-singlefile",
            str(tmp_path / "page.pdf"),
            str(tmp_path / "page"),
        ]
        subprocess.run(picture, check=True)
        dark[text] = sum(each < 128 for each in (tmp_path / "page.pgm").read_bytes())
    assert dark["MMMM"] > dark[""] + 50


def test_nothing_from_outside_the_page_is_taken_in(tmp_path: Path) -> None:
    secret = tmp_path / "secret.css"
    secret.write_text("body::before { content: 'SECRET' }")
    page = html.render(document(LEADS)).replace("</head>", f'<link rel="stylesheet" href="{secret.as_uri()}"></head>')
    assert "SECRET" not in text_of(pdf.render(page), tmp_path)


def test_without_the_package_a_finding_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    with pytest.raises(MissingExtra) as caught:
        pdf.render("")
    finding = caught.value.finding()
    assert (finding.kind.name, finding.help) == ("missing-extra", "pip install 'rigc[pdf]'")
