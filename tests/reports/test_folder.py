"""The folder: its order and codes, what stands on its front page, how sheets mention each other, and what is left out and why."""

from __future__ import annotations

from importlib import import_module
from typing import Any

import pytest
from cases import READER, ROOT, compiled
from shelf import Shelf
from written import written

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.results import Results
from rigc.compile import Compiled, compile_rig
from rigc.discover import member
from rigc.files.disk import Disk
from rigc.output.formats import document_renderer
from rigc.output.layout import Layout
from rigc.reports.content import Document, Paragraph, Sheet, Table
from rigc.reports.folder import NoSuchCode, room, saying, sheet_modules, sheet_names
from rigc.reports.front import every_caution
from rigc.reports.front.cautions import JOBS
from rigc.reports.front.every_caution import (
    EARTH,
    JOINED_LEADS,
    MAINS,
    MICROPHONE_LINES,
    OPENED,
    RADIO_LINKS,
    REVERSING_LEADS,
    VERIFIED,
    Caution,
)
from rigc.reports.front.made import made
from rigc.reports.front.sheet_codes import codes, in_runs, in_words, see, written_out

D = ROOT / "examples/long-haul-d/board.rig"


@pytest.fixture(scope="module")
def rig() -> Compiled:
    return compiled(D)


@pytest.fixture(scope="module")
def folder(rig: Compiled) -> tuple[Document, ...]:
    return rig.documents()


@pytest.fixture(scope="module")
def lone() -> Compiled:
    """A rig that follows none."""
    disk = Disk(ROOT / "examples/back-bedroom/board.rig", root=ROOT)
    return compile_rig(disk, disk.name, READER, kept=Kept(Shelf()))


def test_which_sheets_there_are_is_asked_once(lone: Compiled, monkeypatch: pytest.MonkeyPatch) -> None:
    """Kept with the rig: when one is asked for again, no other is made."""
    every = lone.documents()
    monkeypatch.setattr("rigc.reports.folder._is_there", None)
    (again,) = lone.documents(("power-table",))
    assert again in every


def table(sheet: Sheet, name: str) -> Table:
    block = sheet.block(name)
    assert isinstance(block, Table)
    return block


def test_a_code_counts_only_the_sheets_that_there_are() -> None:
    there = [("stage", "wiring-sheet"), ("power", "power-table"), ("power", "ground-sheet"), ("ear", "level-table")]
    assert list(codes(there).values()) == ["S1", "P1", "P2", "E1"]


def test_codes_in_runs() -> None:
    assert in_runs(["F", "S1", "S2", "S3", "P1", "P3", "P4"]) == "F, S1 to S3, P1, P3, P4"


def test_a_sheet_that_the_rig_lacks_says_why_whatever_its_template(lone: Compiled) -> None:
    (document,) = lone.documents(("rework",))
    for form in ("md", "html"):
        text = document_renderer(form)((document,), Layout("a4", None, NOTHING_KEPT))
        assert "so there is nothing to rework" in text


_TWO = "unit tern {{\n  {}\n}}\nunit marl {{\n  input in ts\n  output out ts\n}}\nchain tern -> marl\n"


@pytest.mark.parametrize(
    "text",
    ["", _TWO.format("output out ts\n  insured 80 EUR"), _TWO.format("output out ts\n  body 60 x 110 x 50 mm")],
    ids=["nothing", "insured", "with-body"],
)
def test_what_says_that_a_sheet_is_there_is_right(text: str) -> None:
    results = written(text)
    saying = [each for each in map(import_module, sheet_modules()) if hasattr(each, "THERE")]
    assert len(saying) >= 5
    for each in saying:
        assert bool(results.call(each.THERE)) is isinstance(made(results, each.SHEET), Sheet), each.__name__


def test_no_two_sheets_of_a_room_state_one_place() -> None:
    places = [(room(module), member(module, "PLACE")) for module in sheet_modules()]
    assert len(places) == len(set(places))


def test_the_folder_is_in_the_order_of_work(folder: tuple[Document, ...]) -> None:
    """Front page, then stage, power, deck, bench, ear, record; no number is left out, and each sheet is counted."""
    assert [each.number for each in folder] == list(range(1, len(folder) + 1))
    assert {each.count for each in folder} == {len(folder)}
    letters = "".join(dict.fromkeys(each.code[0] for each in folder))
    assert letters == "FSPDBER"
    for letter in letters[1:]:
        own = [each.code for each in folder if each.code.startswith(letter)]
        assert own == [f"{letter}{number}" for number in range(1, len(own) + 1)]


def test_a_sheet_is_named_by_its_code(rig: Compiled, folder: tuple[Document, ...]) -> None:
    power = next(each for each in folder if each.sheet.name == "power-table")
    assert power.code == "P1"
    (alone,) = rig.documents(("P1",))
    assert (alone.sheet.name, alone.number, alone.count) == ("power-table", power.number, power.count)
    assert rig.sheets(("P1",))[0].name == "power-table"
    with pytest.raises(NoSuchCode, match="no sheet P9 in this rig's folder; it has F, S1, "):
        rig.documents(("P9",))


def test_sheets_that_are_asked_for_are_made_alone(
    rig: Compiled, folder: tuple[Document, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    """They are those of the whole folder, and what takes long beside them is not made to count and to name them."""
    asked: list[str] = []

    def noted(results: Results, sheet: Any) -> Any:
        asked.append(sheet.__name__)
        return made(results, sheet)

    monkeypatch.setattr("rigc.reports.folder.made", noted)
    names = ("power-table", "cable-list", "B3")
    assert rig.documents(names) == tuple(each for each in folder if {each.sheet.name, each.code} & set(names))
    assert not {"crew_card", "fault_tree", "deck_drawing", "plan_full_size", "loading_table"} & set(asked)


def test_sheets_mention_each_other_by_name_and_code(rig: Compiled, folder: tuple[Document, ...]) -> None:
    by_name = {each.sheet.name: each for each in folder}
    told = by_name["signal-flow"].sheet.block("table")
    assert isinstance(told, Paragraph)
    assert told.lines[0].endswith(f"see the table of the wiring sheet {by_name['wiring-sheet'].code}.")
    alone = rig.sheets(("signal-flow",))[0].block("table")
    assert isinstance(alone, Paragraph)
    assert alone.lines[0].endswith("see the table of the wiring sheet.")


def test_no_mention_is_left_unwritten(folder: tuple[Document, ...]) -> None:
    assert [each.sheet.name for each in folder if "\\x02" in repr(each.sheet)] == []


def test_every_mention_names_a_sheet() -> None:
    texts = [path.read_text("utf-8") for path in (ROOT / "rigc/reports").rglob("*.py")]
    named = {part.split(text[0])[0] for text in ("'", '"') for each in texts for part in each.split(f"see({text}")[1:]}
    assert {name.strip("'\"") for name in named} <= set(sheet_names())


def test_a_mention_of_a_sheet_that_is_left_out_is_its_name() -> None:
    sheet = Sheet("a", "A", "crew", (Paragraph("p", (f"see {see('power-table')}",)),))
    assert written_out(sheet, {"power-table": "P1"}).blocks[0].lines == ("see power table P1",)  # type: ignore[union-attr]
    assert written_out(sheet, {}).blocks[0].lines == ("see power table",)  # type: ignore[union-attr]


def test_what_is_open_stands_first_on_the_front_page(rig: Compiled, folder: tuple[Document, ...]) -> None:
    """Every warning, and how many rules were not judged; nothing of it is accepted, so nobody signs."""
    front = folder[0].sheet
    assert front.blocks[0].name == "open"
    told = table(front, "open")
    warnings = [each.message for each in rig.findings if each.level.word == "warning"]
    assert [row.cells[1].text for row in told.rows if row.cells[0].text == "warning"] == warnings
    last = told.rows[-1].cells
    assert last[1].text.startswith("1 rule is not judged for want of facts: see missing and assumed facts R")
    assert [column.head for column in told.columns] == ["what", "finding"]


def test_key_figures(folder: tuple[Document, ...]) -> None:
    """Of revision D: 33.499 kg in its trunk, 23 − 33.499 = −10.499 and 32 − 33.499 = −1.499 kg are left."""
    (row,) = table(folder[0].sheet, "figures").rows
    assert [cell.text for cell in row.cells[:4]] == ["trunk", "33.499", "−10.499", "−1.499"]
    assert [cell.mark for cell in row.cells[2:4]] == ["FAIL", "FAIL"]


def cautions(sheet: Sheet) -> list[str]:
    return [
        line
        for block in sheet.blocks
        if isinstance(block, Paragraph) and block.kind == "caution"
        for line in block.lines
    ]


def test_three_cautions_stand_where_the_hand_is_and_the_others_once_on_the_front_page(
    folder: tuple[Document, ...],
) -> None:
    """This rig has radio, and a lead that joins outlets; no microphone line and no reversing lead: what it calls for is told, and nothing else."""
    front, *sheets = (each.sheet for each in folder)
    assert [each.name for each in sheets if len(cautions(each)) > 3] == []
    on_sheets = {line for each in sheets for line in cautions(each)}
    called = {each for sheet in sheets for each in JOBS.get(sheet.name, ())}
    there = {each for each in called if each.words in on_sheets | set(cautions(front))}
    assert {each.of for each in called - there} == {MICROPHONE_LINES, REVERSING_LEADS}
    assert {JOINED_LEADS, RADIO_LINKS} <= {each.of for each in there}
    kills = [EARTH.words, MAINS.words, OPENED.words]
    assert [line for line in cautions(front) if line in on_sheets] == kills
    assert cautions(front)[-1] == VERIFIED.words
    assert len(set(cautions(front))) == len(cautions(front))


def test_the_most_dangerous_caution_stands_first_and_none_belongs_to_no_job(folder: tuple[Document, ...]) -> None:
    every = [each for each in vars(every_caution).values() if isinstance(each, Caution)]
    assert {each for job in JOBS.values() for each in job} == set(every) - {VERIFIED}
    lines = [each.words for each in every]
    places = [lines.index(line) for line in cautions(folder[0].sheet)]
    assert places == sorted(places)
    assert set(JOBS) <= set(sheet_names())


def test_the_index_lists_every_sheet_or_says_why_not(folder: tuple[Document, ...]) -> None:
    front = folder[0].sheet
    index = table(front, "index")
    assert index.tick
    assert [row.cells[0].text for row in index.rows] == [each.code for each in folder[1:]]
    left_out = table(front, "left_out")
    assert len(index.rows) + len(left_out.rows) == len(sheet_names()) - 1
    assert all(row.cells[1].text.endswith(".") for row in left_out.rows)
    assert ["Accepted deviations", "No finding is accepted."] in [[c.text for c in row.cells] for row in left_out.rows]


@pytest.mark.parametrize(
    ("sheet", "words"),
    [
        ("stage-hook-up", "stage hook-up"),
        ("de-rig-list", "de-rig list"),
        ("as-built", "as-built"),
        ("cut-list", "cut list"),
    ],
)
def test_a_sheet_is_named_as_it_is_said(sheet: str, words: str) -> None:
    assert in_words(sheet) == words


def test_what_says_nothing_is_silent_and_a_template_may_ask_for_it() -> None:
    said, lines = Paragraph("player", ("the delay is new",)), Paragraph("call", ())
    rows, told = Table("outlets", "Outlets", (), (), empty=""), Table("labels", "Labels", (), ())
    made = saying(Sheet("rework", "Rework", "crew", (said, lines, rows, told)))
    assert [block.name for block in made.blocks] == ["player", "labels"]
    assert (made.block("call"), made.block("outlets")) == (lines, rows)
