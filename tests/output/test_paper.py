"""How sheets fill their pages: constant columns said once, rows a little lower or higher, short sheets of one hand on one page."""

from __future__ import annotations

import re
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest
from browser import as_pdf
from cases import ROOT, compiled
from small_sheets import COLUMNS, document, first_daily, row
from test_print import MISSING, pages, printed

from rigc.output import html, markdown
from rigc.output.csv import render_tables as csv
from rigc.output.paper.constant import without_constants
from rigc.output.paper.fit import Fit, fitted
from rigc.output.paper.setting import Look, lines
from rigc.reports.content import Cell, Column, Document, Drawing, Table
from rigc.reports.schedule.worst_first import worst_first

FEEDS = (
    Column("lead"),
    Column("set to", "V", number=True, folds="{}"),
    Column("pole", folds="{}"),
    Column("spare", folds="spare: {}"),
    Column("to"),
)


def feeds(*told: tuple[str, str, str]) -> Table:
    """A lead a row: its volts, its pole, and whether it is spare."""
    rows = tuple(row(f"D{at}", *each, f"unit {at}") for at, each in enumerate(told))
    return Table("feeds", "Feeds", FEEDS, rows)


def folded(table: Table) -> Table:
    (told,) = without_constants(document(table).sheet, str).blocks
    assert isinstance(told, Table)
    return told


def test_what_all_rows_have_in_common_stands_in_the_caption() -> None:
    """Five rows, of which one may differ (one of five): 9 V but for D4, all centre-negative, none of them spare."""
    told = folded(feeds(*[("9", "centre-negative", "")] * 4, ("18", "centre-negative", "")))
    assert told.caption == "Feeds · all 9 V, centre-negative, except\u00a0▲"
    assert [column.head for column in told.columns] == ["lead", "to", "▲"]
    assert [each.cells[-1].text for each in told.rows] == ["", "", "", "", "▲ 18 V"]


def test_more_exceptions_than_one_row_of_five_keep_the_column() -> None:
    told = folded(feeds(*[("9", "centre-negative", "")] * 3, ("18", "centre-negative", "")))
    assert [column.head for column in told.columns] == ["lead", "set to", "to"]
    assert told.caption == "Feeds · all centre-negative"


@pytest.mark.parametrize(
    ("last", "caption", "sign"),
    [
        (("", "plus", ""), "all 9 V, minus, except\u00a0▲", "▲ without set to, plus"),
        (("", "", "yes"), "all 9 V, minus, except\u00a0▲", "▲ none of these, spare: yes"),
        (("9", "", ""), "all 9 V, minus, except\u00a0▲", "▲ without pole"),
    ],
)
def test_what_a_row_lacks_is_told_once(last: tuple[str, str, str], caption: str, sign: str) -> None:
    told = folded(feeds(*[("9", "minus", "")] * 4, last))
    assert (told.caption, told.rows[-1].cells[-1].text) == (f"Feeds · {caption}", sign)


def test_what_a_row_lacks_of_the_one_thing_that_is_told_of_all() -> None:
    told = folded(feeds(*[(str(volts), "minus", "") for volts in range(9, 13)], ("13", "", "")))
    assert (told.caption, told.rows[-1].cells[-1].text) == ("Feeds · all minus, except\u00a0▲", "▲ not this")


def test_a_blank_of_which_there_is_nothing_to_say_is_no_exception() -> None:
    """The last step of a chain gives nothing on: its level has no class."""
    columns = (Column("step"), Column("lead"), Column("level class", folds="{} level", blank_fits=True))
    rows = tuple(
        row(step, lead, level) for step, lead, level in (("1", "", "line"), ("2", "A1", "line"), ("3", "A2", ""))
    )
    table = folded(Table("signal", "Signal", columns, rows))
    assert table.caption == "Signal · all line level"
    assert [column.head for column in table.columns] == ["step", "lead"]
    rows = tuple(
        row(each.cells[0].text, each.cells[1].text, "not said" if number < 2 else "")
        for number, each in enumerate(rows)
    )
    assert folded(Table("signal", "Signal", columns, rows)).caption == "Signal · not known: level class"


def test_what_is_known_of_no_row_is_named_in_the_caption() -> None:
    told = folded(feeds(*[("9", "?", "?")] * 4, ("9", "minus", "?")))
    assert told.caption == "Feeds · all 9 V; not known: pole, spare, except\u00a0▲"
    assert told.rows[-1].cells[-1].text == "▲ minus"


def test_a_column_that_says_nothing_is_left_out_unless_it_is_written_in_by_hand() -> None:
    table = feeds(*[("9", "minus", "")] * 2)
    assert [column.head for column in folded(table).columns] == ["lead", "set to", "pole", "to"]
    room = table.replace(columns=(*FEEDS[:3], FEEDS[3].replace(least_mm=20.0), FEEDS[4]))
    assert [column.head for column in folded(room).columns] == [column.head for column in FEEDS]


def test_a_lone_fact_stands_behind_its_sign_and_is_not_told_of_the_others() -> None:
    told = folded(feeds(*[(str(volts), "", "") for volts in range(9, 13)], ("13", "", "yes")))
    assert told.caption == "Feeds"
    assert told.rows[-1].cells[-1].text == "▲ spare: yes"


def test_two_rows_a_loud_mark_and_a_total_keep_the_column() -> None:
    assert len(folded(feeds(*[("9", "a", "b")] * 2)).columns) == 5
    plain = feeds(*[("9", "a", "")] * 5)
    loud = plain.rows[0].replace(cells=(Cell("D0"), Cell("9", mark="FAIL"), *plain.rows[0].cells[2:]))
    assert [each.head for each in folded(plain.replace(rows=(loud, *plain.rows[1:]))).columns] == [
        "lead",
        "set to",
        "to",
    ]
    total = row("sum", "45", "", "", "", total=True)
    assert [each.head for each in folded(plain.replace(rows=(*plain.rows, total))).columns] == ["lead", "set to", "to"]


def test_something_stands_beside_each_name() -> None:
    """A table of names alone tells nothing to who hears it read: the last column stays, though it says the same in all rows."""
    told = folded(
        feeds(*[("9", "a", "")] * 5).replace(columns=FEEDS[:3], rows=tuple(row(f"D{at}", "9", "a") for at in range(5)))
    )
    assert told.caption == "Feeds · all 9 V"
    assert [column.head for column in told.columns] == ["lead", "pole"]


def test_pages_and_markdown_say_it_once_and_data_keeps_every_column() -> None:
    whole = document(feeds(*[("9", "centre-negative", "")] * 5))
    for text in (html.render(whole), markdown.render(whole)):
        assert "Feeds · all 9 V, centre-negative" in re.sub("\u00a0", " ", text)
        assert "set to" not in text
    assert csv((feeds(*[("9", "x", "")] * 5),)).startswith("lead,set_to_V,pole,spare,to,marks")


def test_rows_that_are_fine_are_counted_and_left_out_on_pages_alone() -> None:
    rows = (
        row("A1", "60", "look"),
        row("A2", "90", "fine").replace(fine=True),
        row("A3", "90", "fine").replace(fine=True),
    )
    table = Table("crossings", "Crossings", COLUMNS, rows, fine="2 are square")
    assert [each.cells[0].text for each in folded(table).rows] == ["A1"]
    assert folded(table).caption == "Crossings · 2 are square"
    none = folded(table.replace(rows=rows[1:]))
    assert (none.rows, none.empty) == ((), "2 are square")
    assert folded(table.replace(fine="")).rows == rows
    assert csv((table,)).count("\r\n") == 4


def test_a_share_is_drawn_beside_its_figure() -> None:
    """45 % fills 45 of the 100 of a bar, 120 % all of it; what is not known has none. The figure is text, the bar is not read out."""
    column = Column("load", "%", number=True, bar=True)
    table = Table("t", "T", (Column("outlet"), column), (row("a1", "45"), row("a2", "120"), row("a3", "?")))
    text = html.render(document(table))
    assert re.findall(r'<rect width="([\d.]+)" height="10"/>', text) == ["45.0", "100.0"]
    assert text.count('<svg class="bar" viewBox="0 0 100 10" aria-hidden="true">') == 2
    assert all(f"{figure}</td>" in text for figure in ("</svg>45", "</svg>120", "?"))  # on one line, on a telephone too


def test_a_row_with_a_failure_stands_first_and_a_total_last() -> None:
    sums, plain = row("sum", "3", "", total=True), row("A1", "1", "make")
    bad = plain.replace(cells=(*plain.cells[:2], Cell("make", mark="FAIL")))
    soft = plain.replace(cells=(*plain.cells[:2], Cell("make", mark="assumed")))
    assert worst_first((sums, plain, soft, bad)) == (bad, plain, soft, sums)


def test_a_line_breaks_where_it_must() -> None:
    """Letters of 10 mm: `aaa` is 3 x 5.34 mm wide (the typeface's `a` is 0.534 em), a space 2.36 mm."""
    look = Look(10.0)
    assert lines("aaa aaa", look, 34.5) == 1
    assert lines("aaa aaa", look, 34.3) == 2
    assert lines("aaa aaa\na", look, 34.5) == 2
    assert lines("", look, 1.0) == 1


def long(count: int, name: str = "cable-list", number: int = 3, code: str = "B3") -> Document:
    table = Table("leads", "Leads", COLUMNS, tuple(row(f"L{at:03}", "153", "make") for at in range(count)))
    told: Document = document(table, name=name).replace(number=number, code=code)
    return told


def fit(*documents: Document) -> tuple[Fit, ...]:
    return fitted(documents, "a4", frozenset())


def test_rows_are_a_little_lower_or_higher_where_that_spares_a_page_or_fills_it() -> None:
    """A page of A4 takes 273 mm: 39 rows of 6.5 mm below a head of some 14. A few more go on it lower, to 5.7 mm; where these are too
    many, rows are higher, so that the second page is used. Few rows, and as many as fill two pages well, stay as they are."""
    heights = {count: each.row for count in (20, 36, 43, 50, 65) for each in fit(long(count))}
    assert heights[20] == heights[36] == heights[65] == 6.5
    assert 5.7 <= heights[43] < 6.5 < heights[50]


def test_a_sheet_begins_on_the_page_that_one_of_the_same_hand_leaves_half_empty() -> None:
    """Eight rows take a quarter of a page, 36 nearly all of it; 48 go over to a second page, of which they use a third."""
    short, other, bench = long(8), long(9, "cut-list", 4, "B4"), long(10, "history", 5, "R1")
    told = fit(short, other, bench)
    assert [each.shares for each in told] == [3, 3, 5]
    assert [each.names for each in told] == ["B3 · B4", "B3 · B4", ""]
    assert [each.shares for each in fit(long(36), long(36, "cut-list", 4, "B4"))] == [3, 4]
    assert [each.shares for each in fit(long(48), long(48, "cut-list", 4, "B4"))] == [3, 3]
    assert [each.shares for each in fit(long(8), long(8, "label-sheet", 4, "B4"), long(8, "kits", 5, "B5"))] == [
        3,
        4,
        5,
    ]
    text = html.render((short, other))
    assert 'class="sheet shared joins" id="sheet-4"' in text
    assert "#sheet-4 { page: sheet-3; }" in text


def test_a_sheet_lies_across_only_if_what_it_holds_wants_it() -> None:
    across = document(long(60).sheet.blocks[0], landscape=True)
    assert [each.document.sheet.landscape for each in fit(across)] == [False]  # two pages upright, three across
    drawing = Drawing("d", "D", "a line", 250.0, 100.0, ())
    assert [each.document.sheet.landscape for each in fit(document(drawing, *across.sheet.blocks, landscape=True))] == [
        True
    ]


@pytest.mark.parametrize(("count", "across"), [(8, False), (9, True)])
def test_a_dense_table_is_not_squeezed_as_well(count: int, across: bool) -> None:
    """On an upright page of Letter eight columns of such words want 1.13 of its width in small letters, nine of them 1.27: too much."""
    columns = tuple(Column(f"c{at}") for at in range(count))
    table = Table("t", "T", columns, tuple(row(*("some words of a cell",) * count) for _ in range(60)))
    assert [each.document.sheet.landscape for each in fit(document(table, landscape=True))] == [across]


def test_a_sheet_with_a_template_of_its_own_stays_as_it_is() -> None:
    (told,) = fitted((long(43),), "a4", frozenset({"cable-list"}))
    assert (told.row, told.document) == (6.5, long(43))


def used(pdf: Path) -> list[float]:
    """Of each page, down to which part of its height it has ink, within the margins."""
    images = subprocess.run(
        ["pdftoppm", "-r", "20", "-gray", str(pdf)], check=True, capture_output=True, timeout=120
    ).stdout
    found, at = [], 0
    while at < len(images):
        header = re.compile(rb"P5\s+(\d+)\s+(\d+)\s+255\s").match(images, at)
        assert header is not None
        width, height = int(header[1]), int(header[2])
        begin, at = header.end(), header.end() + width * height
        dots = height / (210 if width > height else 297)
        top, bottom = (
            (round(21 * dots), height - round(11 * dots))
            if width > height
            else (round(15 * dots), height - round(11 * dots))
        )
        inked = [
            line for line in range(top, bottom) if min(images[begin + line * width : begin + (line + 1) * width]) < 200
        ]
        found.append((inked[-1] - top) / (bottom - top) if inked else 0.0)
    return found


def cut(pdf: Path) -> list[tuple[int, str]]:
    """The words, with their pages, that reach over the margins or stand one over another in the band above."""
    told = subprocess.run(["pdftotext", "-bbox", str(pdf), "-"], check=True, capture_output=True, timeout=120).stdout
    found = []
    for number, page in enumerate(told.decode().split("<page ")[1:], start=1):
        width, height, *_ = map(float, re.findall(r'"([\d.]+)"', page)[:2])
        left, right, band = (28, width - 28, 57) if width > height else (56, width - 19, 40)  # points
        words = [
            (*map(float, each[:4]), each[4])
            for each in re.findall(
                r'xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>', page
            )
        ]
        above = sorted(word for word in words if word[3] < band)
        found += [
            (number, word[4]) for word in words if word[0] < left - 2 or word[2] > right + 2 or word[3] > height - 12
        ]
        found += [(number, after[4]) for before, after in pairwise(above) if before[2] > after[0] + 1]
    return found


@pytest.mark.slow
@pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}")
@pytest.mark.parametrize(("rig", "paper"), [*first_daily("a4"), *first_daily("letter")[1:]])
def test_few_pages_are_hardly_used_and_nothing_is_cut(tmp_path: Path, rig: str, paper: str) -> None:
    """Of the whole folder few are used to less than 45 % of their height: what no other sheet of the hand has room for."""
    pdf = printed(tmp_path, compiled(ROOT / rig).documents(), paper)
    told = used(pdf)
    assert len(told) == len(pages(pdf))
    assert sum(each < 0.45 for each in told) <= 3
    assert cut(pdf) == []


@pytest.mark.slow
@pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}")
def test_what_is_cut_is_seen(tmp_path: Path) -> None:
    """Cells that reach into the filing edge, and a band whose texts have no room of their own: else the test above could not fail."""
    style = ".wide { margin-left: -8mm; } @page { @top-left { width: 5mm !important; } @top-center { width: 170mm !important; } }"
    page = html.render(long(3)).replace("cable list", "cable list " * 4).replace("</style>", f"{style}</style>", 1)
    (tmp_path / "page.html").write_text(page, encoding="utf-8")
    found = {word for _, word in cut(as_pdf(tmp_path / "page.html"))}
    assert {"0", "(invented)"} <= found  # of L000 that is left
