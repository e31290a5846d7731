"""What a browser really prints: page sizes, what each page bears, heads that repeat. Skipped where the programs are missing."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import Counter
from pathlib import Path

import pytest
from cases import ROOT, compiled
from small_sheets import CAUTION, COLUMNS, EMPTY, document, row

from rigc.output import html
from rigc.output.layout import Layout
from rigc.reports.content import Cell, Column, Document, Row, Table

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-pdf-header-footer",
)
MISSING = [program for program in ("chromium", "pdftotext", "pdftoppm", "pdfinfo") if shutil.which(program) is None]

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}"),
]

LONG = Table("leads", "Leads", COLUMNS, tuple(row(f"L{number:03}", "153", "make") for number in range(120)))

# Width x height in points (1/72 inch): ISO 216 A4 is 210 x 297 mm; US letter is 8.5 x 11 in (ANSI/ASME Y14.1, size A), both from memory.
A4, LETTER = (595, 842), (612, 792)
MARGIN = 28  # points: the 10 mm of the style


def printed(folder: Path, documents: Document | tuple[Document, ...], paper: str) -> Path:
    """The PDF that the browser makes of the documents."""
    page, pdf = folder / "page.html", folder / "page.pdf"
    page.write_text(html.render(documents, Layout(paper=paper)), encoding="utf-8")
    command = ["chromium", *FLAGS, f"--user-data-dir={folder / 'profile'}", f"--print-to-pdf={pdf}", page.as_uri()]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    return pdf


def pages(pdf: Path) -> list[str]:
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, timeout=60).stdout
    return text.decode("utf-8").split("\f")[:-1]


def sizes(pdf: Path) -> list[tuple[int, int]]:
    command = ["pdfinfo", "-f", "1", "-l", "99", str(pdf)]
    text = subprocess.run(command, check=True, capture_output=True, timeout=60).stdout.decode()
    return [(round(float(w)), round(float(h))) for w, h in re.findall(r"Page\s+\d+ size:\s+([\d.]+) x ([\d.]+)", text)]


@pytest.mark.parametrize(
    ("paper", "landscape", "size"), [("a4", False, A4), ("letter", False, LETTER), ("a4", True, A4[::-1])]
)
def test_every_page_has_its_size_and_bears_its_title(
    tmp_path: Path, paper: str, landscape: bool, size: tuple[int, int]
) -> None:
    pdf = printed(tmp_path, document(CAUTION, LONG, EMPTY, landscape=landscape, draft=True), paper)
    texts = pages(pdf)
    assert len(texts) >= 3
    assert sizes(pdf) == [size] * len(texts)
    for number, text in enumerate(texts, start=1):
        for needed in (
            "Night Ferry (invented) · NF-2",
            "revision C7",
            "2026-03-14",
            "9f31c2ab",
            "DRAFT: not to build from",
        ):
            assert needed in text
        assert f"page {number} of {len(texts)}" in text
        assert "printed copy valid for revision" in re.sub(r"\s+", " ", text)
        assert text.count("status") == (1 if "L0" in text or "L1" in text else 0)


def test_a_wide_table_keeps_its_last_column_on_the_paper(tmp_path: Path) -> None:
    columns = tuple(Column(f"column {number}", "mm") for number in range(16))
    cells = tuple(Cell("1250" if number % 2 else f"anamewithnoplacetobreakit{number}.left") for number in range(15))
    table = Table("wide", "Wide", columns, (Row((*cells, Cell("LAST-ONE"))),))
    pdf = printed(tmp_path, document(table, landscape=True), "a4")
    words = subprocess.run(
        ["pdftotext", "-bbox", str(pdf), "-"], check=True, capture_output=True, timeout=60
    ).stdout.decode()
    right_ends = [float(end) for end in re.findall(r'xMax="([\d.]+)"', words)]
    letters = [
        float(bottom) - float(top) for top, bottom in re.findall(r'yMin="([\d.]+)".*yMax="([\d.]+)">aname', words)
    ]
    assert "LAST" in words
    assert max(right_ends) <= A4[1] - MARGIN + 1
    assert min(letters) > 8  # the browser did not shrink the page to make it fit: 8 pt letters stand in a taller line


def test_portrait_and_landscape_sheets_in_one_file(tmp_path: Path) -> None:
    second = document(EMPTY, landscape=True).replace(number=4)
    assert sizes(printed(tmp_path, (document(EMPTY), second), "a4")) == [A4, A4[::-1]]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(
    ("sheet", "words"),
    [("deck-drawing", "the player stands at this side"), ("signal-flow", "Signal runs from left to right")],
)
@pytest.mark.parametrize("board", ["long-haul", "back-bedroom", "tide-line"])
def test_the_first_page_holds_the_drawing_below_the_title(
    tmp_path: Path, board: str, sheet: str, words: str, paper: str
) -> None:
    texts = pages(printed(tmp_path, compiled(ROOT / f"examples/{board}/board.rig").documents((sheet,)), paper))
    assert words in texts[0]
    assert texts[-1].count("\n") > 8  # no page for the foot alone


def right_rule(pdf: Path, paper_mm: float) -> float:
    """How wide the last upright rule of the first page is, within 5 mm of the right margin of 10 mm; in mm, at 600 dots an inch."""
    dots = 600 / 25.4
    left, width = round((paper_mm - 15) * dots), round(8 * dots)
    command = ["pdftoppm", "-r", "600", "-gray", "-f", "1", "-l", "1", "-x", str(left), "-y", "0", "-W", str(width)]
    image = subprocess.run([*command, "-H", "4500", str(pdf)], check=True, capture_output=True, timeout=60).stdout
    header = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", image)
    assert header is not None
    across, rows = int(header[1]), image[header.end() :]
    dark = [sum(value < 160 for value in rows[x::across]) / dots > 30 for x in range(across)]
    return sum(dark) / dots


@pytest.mark.parametrize(("landscape", "paper_mm"), [(False, 210), (True, 297)])
def test_the_right_rules_of_tables_are_on_the_paper(tmp_path: Path, landscape: bool, paper_mm: float) -> None:
    """Half of a rule of 0.2 mm at least: a browser that rounds the page's width down would leave a hair of it."""
    assert right_rule(printed(tmp_path, document(LONG, landscape=landscape), "a4"), paper_mm) > 0.1


def test_a_table_is_not_parted_from_its_last_or_first_row(tmp_path: Path) -> None:
    """Tables of 25 to 36 rows, one after another: wherever a page ends, two rows stand together."""
    tables = tuple(
        Table(f"t{many}", f"Table {many}", COLUMNS, tuple(row(f"R{many}-{at:02}", "153", "make") for at in range(many)))
        for many in range(25, 37)
    )
    for text in pages(printed(tmp_path, document(*tables), "a4")):
        counts = Counter(re.findall(r"R(\d+)-\d\d", text))
        assert counts
        assert min(counts.values()) >= 2


def test_what_stands_in_the_margins_is_not_said_again_at_the_end(tmp_path: Path) -> None:
    texts = pages(printed(tmp_path, document(CAUTION), "a4"))
    assert len(texts) == 1
    assert "A printed copy is valid" not in texts[0]
