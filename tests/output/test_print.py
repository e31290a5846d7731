"""What a browser really prints: page sizes, what each page bears, heads that repeat. Skipped where the programs are missing."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import Counter
from pathlib import Path

import pytest
from browser import as_pdf
from cases import ROOT, compiled
from small_sheets import CAUTION, COLUMNS, EMPTY, document, row

from rigc.output import html
from rigc.output.layout import Layout
from rigc.reports.content import Cell, Column, Document, Row, Table

MISSING = [program for program in ("chromium", "pdftotext", "pdftoppm", "pdfinfo") if shutil.which(program) is None]

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}"),
]

LONG = Table("leads", "Leads", COLUMNS, tuple(row(f"L{number:03}", "153", "make") for number in range(120)))

WIDE = LONG.replace(columns=tuple(column.replace(least_mm=70.0) for column in COLUMNS))  # goes on no upright page

# Width x height in points (1/72 inch): ISO 216 A4 is 210 x 297 mm; US letter is 8.5 x 11 in (ANSI/ASME Y14.1, size A), both from memory.
A4, LETTER = (595, 842), (612, 792)
MARGIN = 28  # points: the 10 mm that a turned page leaves at its sides


def printed(folder: Path, documents: Document | tuple[Document, ...], paper: str) -> Path:
    """The PDF that the browser makes of the documents."""
    page = folder / "page.html"
    page.write_text(html.render(documents, Layout(paper=paper)), encoding="utf-8")
    return as_pdf(page)


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
    pdf = printed(
        tmp_path, document(CAUTION, WIDE if landscape else LONG, EMPTY, landscape=landscape, draft=True), paper
    )
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
    [("deck-drawing", "front edge (player)"), ("signal-flow", "Signal runs from left to right")],
)
@pytest.mark.parametrize("board", ["long-haul", "back-bedroom", "tide-line"])
def test_the_first_page_holds_the_drawing_below_the_title(
    tmp_path: Path, board: str, sheet: str, words: str, paper: str
) -> None:
    texts = pages(printed(tmp_path, compiled(ROOT / f"examples/{board}/board.rig").documents((sheet,)), paper))
    assert words in texts[0]
    assert texts[-1].count("\n") > 8  # no page for the foot alone


def inked(pdf: Path, page: int, area: tuple[float, float, float, float]) -> bool:
    """Whether an area of a page (left, top, width, height in mm) has ink."""
    left, top, width, height = (str(round(length / 25.4 * 150)) for length in area)
    command = ["pdftoppm", "-r", "150", "-gray", "-f", str(page), "-l", str(page)]
    command += ["-x", left, "-y", top, "-W", width, "-H", height, str(pdf)]
    image = subprocess.run(command, check=True, capture_output=True, timeout=60).stdout
    header = re.match(rb"P5\s+\d+\s+\d+\s+255\s", image)
    assert header is not None
    return min(image[header.end() :]) < 160


@pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
@pytest.mark.parametrize("landscape", [False, True])
def test_the_edge_that_is_punched_is_bare(tmp_path: Path, landscape: bool, paper: str, size: tuple[int, int]) -> None:
    """The left edge of 20 mm; of a turned page the upper one, where two holes are punched: 80 mm apart, of 6 mm, 12 mm
    from the edge (ISO 838, from memory). No printer reaches the last 4 mm of a page (common practice, no source)."""
    pdf = printed(tmp_path, document(CAUTION, WIDE if landscape else LONG, landscape=landscape), paper)
    width, height = (length / 72 * 25.4 for length in (size[::-1] if landscape else size))
    holes = [(width / 2 + side - 5, 0.0, 10.0, 15.0) for side in (-40, 40)]
    bare = holes if landscape else [(0.0, 0.0, 19.5, height)]
    rims = [
        (0.0, 0.0, 4.0, height),
        (0.0, 0.0, width, 4.0),
        (width - 4, 0.0, 4.0, height),
        (0.0, height - 4, width, 4.0),
    ]
    for page in range(1, len(pages(pdf)) + 1):
        assert [area for area in (*bare, *rims) if inked(pdf, page, area)] == []
    assert inked(pdf, 1, (20.0, 0.0, 170.0, 14.0))


def test_the_title_block_stands_once_at_the_foot_of_the_first_page(tmp_path: Path) -> None:
    texts = pages(printed(tmp_path, document(LONG), "a4"))
    for words in ("client Ada Quill (invented)", "drawn K. Moor", "checked -", "for bench"):
        assert [words in re.sub(r"[\s\u200b]+", " ", text) for text in texts] == [True, *[False] * (len(texts) - 1)]


def spots(pdf: Path, word: str) -> list[tuple[int, tuple[float, float, float, float]]]:
    """Page and place (left, top, width, height in mm) of each printed copy of a word, seen or not."""
    told = subprocess.run(["pdftotext", "-bbox", str(pdf), "-"], check=True, capture_output=True, timeout=60).stdout
    found: list[tuple[int, tuple[float, float, float, float]]] = []
    for number, page in enumerate(told.decode().split("<page ")[1:], start=1):
        places = re.findall(rf'xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">{word}<', page)
        for place in places:
            left, top, right, bottom = (float(length) / 72 * 25.4 for length in place)
            found.append((number, (left, top, right - left, bottom - top)))
    return found


def test_a_table_that_goes_on_says_so_and_bears_its_caption(tmp_path: Path) -> None:
    """Three tables, each longer than a page: every page bears the caption of each of its tables, `continued` from the second page of one on."""
    tables = tuple(
        LONG.replace(name=name, caption=f"Leads {name}", rows=LONG.rows[:count])
        for name, count in (("alpha", 50), ("beta", 60), ("gamma", 4))
    )
    pdf = printed(tmp_path, document(*tables), "a4")
    begun: set[str] = set()
    captions = [(name, page, place) for name in ("alpha", "beta", "gamma") for page, place in spots(pdf, name)]
    words = {(page, round(place[1])): place for page, place in spots(pdf, "continued")}
    for name, page, place in captions:
        (beside,) = (where for (at, top), where in words.items() if at == page and abs(top - place[1]) < 2)
        assert inked(pdf, page, beside) == (name in begun)
        begun.add(name)
    assert len(captions) > 3
    for number, text in enumerate(pages(pdf), start=1):
        assert text.count("status") == sum(page == number for _, page, _ in captions)


def test_never_fewer_than_five_rows_stand_alone(tmp_path: Path) -> None:
    """Tables of 25 to 36 rows, one after another: wherever a page ends, five rows stand together."""
    tables = tuple(
        Table(f"t{many}", f"Table {many}", COLUMNS, tuple(row(f"R{many}-{at:02}", "153", "make") for at in range(many)))
        for many in range(25, 37)
    )
    for text in pages(printed(tmp_path, document(*tables), "a4")):
        counts = Counter(re.findall(r"R(\d+)-\d\d", text))
        assert counts
        assert min(counts.values()) >= 5


def test_what_stands_in_the_margins_is_not_said_again_at_the_end(tmp_path: Path) -> None:
    texts = pages(printed(tmp_path, document(CAUTION), "a4"))
    assert len(texts) == 1
    assert "A printed copy is valid" not in texts[0]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("example", ["long-haul-d", "tide-line"])
def test_the_crew_card_is_one_page(tmp_path: Path, example: str, paper: str) -> None:
    """It lies in the lid, so that what does not fit on it is not read."""
    (card,) = compiled(ROOT / "examples" / example / "board.rig").documents(("crew-card",))
    assert len(pages(printed(tmp_path, card, paper))) == 1
