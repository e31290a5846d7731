"""What an editor is told of a rig, each by a worked case."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import READER

from editor.desk import CURSOR, LEADS, STARTER, Desk, typed
from rigc.editor.answers.actions import actions
from rigc.editor.answers.colours import Colour, colours
from rigc.editor.answers.definition import definition, references
from rigc.editor.answers.findings import carried
from rigc.editor.answers.folds import Fold, folds
from rigc.editor.answers.formatting import formatted
from rigc.editor.answers.hover import hover
from rigc.editor.answers.inlays import inlays
from rigc.editor.answers.lenses import SHEETS, lenses
from rigc.editor.answers.outline import outline
from rigc.editor.answers.renaming import CannotRename, renamed, renamed_word
from rigc.reports.folder import sheet_names
from rigc.source import Source, Span

RIG = STARTER + LEADS


def at(word: str, text: str = RIG) -> str:
    """The text with the cursor in the first place of a stretch."""
    before, _, behind = text.partition(word)
    return f"{before}{word[:1]}{CURSOR}{word[1:]}{behind}"


def test_a_fact_is_told_with_its_source(tmp_path: Path) -> None:
    told = hover(*_asked(Desk(tmp_path, at("400 g"))))
    assert told is not None
    assert told.lines[0] == "400 g, ASSUMED 2026-03-02 by nobody yet"
    desk = Desk(tmp_path, at("8 mA", RIG.replace("draws 8 mA", 'draws 8 mA measured 2026-03-01 by "R.K."')))
    told = hover(*_asked(desk))
    assert told is not None
    assert told.lines == ("8 mA, measured 2026-03-01 by R.K.",)
    told = hover(*_asked(Desk(tmp_path, at("8 mA +- 10 %", RIG.replace("draws 8 mA", "draws 8 mA +- 10 %")))))
    assert told is not None
    assert told.lines[1] == "± 10 %: from 7.2 to 8.8 mA"  # 8 × 0.9, 8 × 1.1


def test_a_lead_is_told_with_the_why_of_its_length(tmp_path: Path) -> None:
    desk = Desk(tmp_path, at("A1 drive"))
    desk.check()
    told = hover(*_asked(desk))
    assert told is not None
    assert told.lines == ("lead A1", "drive.out to echo.in")
    assert "A1.finished = " in told.reasons
    assert "formula:" in told.reasons
    assert "A1.cut = " in told.reasons


def test_a_jack_that_comes_by_like_is_told_as_typed(tmp_path: Path) -> None:
    told = hover(*_asked(Desk(tmp_path, at("in flat"))))
    assert told is not None
    assert told.lines[0] == "echo.in"
    assert told.lines[1].startswith("input, ts, 1 Mohm, right")


def test_nothing_is_told_of_a_blank(tmp_path: Path) -> None:
    assert hover(*_asked(Desk(tmp_path, at("  mass 400")))) is None


def test_lengths_stand_behind_leads_and_loads_behind_feeds(tmp_path: Path) -> None:
    text = RIG.replace("others from mains-box", "drive, echo from mains-box.o1 shared")
    desk = Desk(tmp_path, text)
    draft, source, _ = desk.here()
    assert inlays(draft, desk.session.computed(desk.path), source) == ()  # nothing was computed yet
    desk.check()
    found = {each.why: each.text for each in inlays(draft, desk.session.computed(desk.path), source)}
    assert found["mains-box.o1.percent"] == "34 %"  # (8 + 60) / 200
    # as in the ten minutes of the README: 70 mm between the jacks, 90 mm the shortest lead, two plugs of 12 mm cut in
    assert found["A1.finished"] == "90 mm, cut 114 mm"
    desk.put(f"# one more line\n{text}")
    moved = inlays(*(desk.session.draft(desk.path), desk.session.computed(desk.path)), desk.here()[1])
    assert [each.offset for each in moved] == [
        each.offset + len("# one more line\n") for each in inlays(draft, desk.session.computed(desk.path), source)
    ]


def test_definition_and_references_go_over_files(tmp_path: Path) -> None:
    (tmp_path / "bench.rig").write_text(
        'language 1\nuse "stock/plugs.rig"\ncable thin "thin coax" {\n  carries audio\n}\n'
    )
    text = RIG.replace('use "stock/plugs.rig"', 'use "bench.rig"').replace("of mini-coax", "of thin")
    desk = Desk(tmp_path, at("thin", text.replace("thin", "thin", 1)))
    (found,) = definition(*desk.here())
    assert (found.source.name, found.line, found.text) == ("bench.rig", 3, "thin")
    assert [(each.source.name, each.text) for each in references(*desk.here())] == [
        ("bench.rig", "thin"),
        ("board.rig", "thin"),
    ]
    desk.put(at('"bench.rig"', text))
    (found,) = definition(*desk.here())
    assert (found.source.name, found.start) == ("bench.rig", 0)


@pytest.mark.parametrize(
    ("word", "declared"),
    [
        ("echo.in", 'unit echo like drive "delay"'),
        ("in flat", "input in ts"),  # the jack of echo is declared in the block of drive
        ("drive at 200", 'unit drive "overdrive"'),
        ('drive "delay"', 'unit drive "overdrive"'),
        ("plank {", "deck plank {"),
    ],
)
def test_definitions(tmp_path: Path, word: str, declared: str) -> None:
    (found,) = definition(*Desk(tmp_path, at(word)).here())
    assert found.source.line(found.line).strip().startswith(declared)


def test_an_outlet_in_the_middle_of_a_run_is_declared_by_the_run(tmp_path: Path) -> None:
    text = RIG.replace("o1..o2 9", "o1..o3 9").replace("others from mains-box", "drive from mains-box.o2")
    desk = Desk(tmp_path, at("o2  #", text))
    (found,) = definition(*desk.here())
    assert found.text == "o1..o3"


def test_a_rename_reaches_every_file_and_leaves_the_old_name(tmp_path: Path) -> None:
    draft, source, offset = Desk(tmp_path, at("drive at 200")).here()
    texts = renamed(draft, READER.reserved, source, offset, "mill")
    assert set(texts) == {"board.rig"}
    assert "  was drive\n" in texts["board.rig"]
    assert "chain guitar -> mill -> echo -> combo" in texts["board.rig"]
    assert 'unit echo like mill "delay"' in texts["board.rig"]


@pytest.mark.parametrize(
    ("word", "new", "why"),
    [
        ("drive at 200", "Mill", "is no name"),
        ("drive at 200", "echo", "is"),
        ("drive at 200", "others", "word of the language"),
        ("in flat", "input", "printed on the unit"),
        ("A1 drive", "A9", "never given again"),
        ("  mass 400", "x", "no name stands here"),
    ],
)
def test_what_cannot_be_renamed(tmp_path: Path, word: str, new: str, why: str) -> None:
    draft, source, offset = Desk(tmp_path, at(word)).here()
    with pytest.raises(CannotRename, match=why):
        renamed(draft, READER.reserved, source, offset, new)


def test_the_word_that_would_be_renamed(tmp_path: Path) -> None:
    assert renamed_word(*Desk(tmp_path, at("drive at 200")).here()).text == "drive"


def test_the_outline(tmp_path: Path) -> None:
    entries = {each.name: each for each in outline(READER.parse(Desk(tmp_path, RIG).here()[1]).file)}
    assert (entries["drive"].sort, entries["drive"].detail) == ("unit", "overdrive")
    assert [each.name.split()[0] for each in entries["drive"].inside] == ["input", "output", "inlet"]
    assert "chain guitar -> drive -> echo -> combo" in entries
    assert [each.name[:2] for each in entries["leads"].inside] == ["A1"]
    for entry in entries.values():  # as the protocol demands
        assert entry.span.start <= entry.word.start <= entry.word.end <= entry.span.end


def test_folds_of_a_text_that_cannot_be_read() -> None:
    text = '# a\n# b\nuse "a"\nuse "b"\nunit {\n  dra\n}\nunit tern { mass 3 g }\nunit fen {\n'
    assert folds(text) == (Fold(0, 1, "comment"), Fold(2, 3, "imports"), Fold(4, 6, "block"))


def test_colours_know_what_a_name_means(tmp_path: Path) -> None:
    draft, source, _ = Desk(tmp_path, RIG).here()
    found = {(each.start, source.text[each.start : each.end]): each for each in colours(draft, source)}

    def colour(line: str, word: str) -> Colour:
        start = source.text.index(line) + line.index(word)
        return found[start, word]

    assert (colour('unit drive "', "drive").sort, colour('unit drive "', "drive").declares) == ("class", True)
    assert (colour("drive at 200", "drive").sort, colour("drive at 200", "drive").declares) == ("class", False)
    assert colour("draws 8 mA", "draws").sort == "keyword"
    assert colour("draws 8 mA", "8").sort == "number"
    assert colour("draws 8 mA", "mA").sort == "type"
    assert colour("A1 drive.out", "A1").sort == "enumMember"
    assert colour("A1 drive.out", "out").sort == "property"
    assert colour("of mini-coax", "mini-coax").sort == "struct"
    assert colour("70 x 120", "x").sort == "keyword"
    assert colour("chain guitar -> drive", "->").sort == "operator"
    assert all("\n" not in source.text[each.start : each.end] for each in found.values())


def test_every_lens_opens_a_sheet_that_there_is(tmp_path: Path) -> None:
    assert {sheet for sheets in SHEETS.values() for sheet in sheets} <= set(sheet_names())
    found = lenses(READER.parse(Desk(tmp_path, RIG).here()[1]).file)
    assert [each.sheet for each in found if each.span.text.startswith("leads")] == ["cable-list", "cut-list"]


def test_an_action_is_a_mend_that_works(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG.replace("chain guitar -> drive", "chain guitar -> drivee"))
    _, source, _ = desk.here()
    trials = desk.session.trials(desk.path)
    findings = trials.bench.made.findings
    start = source.text.index("drivee")
    (found,) = actions(findings, source, start, start, trials)
    assert found.title == "write 'drive'"
    assert found.texts == {"board.rig": RIG}
    assert actions(findings, source, 0, 3, trials) == ()
    trials.bench.left = 0  # no more may be tried, and what was tried is known
    assert actions(findings, source, start, start, trials) == (found,)


def test_formatting(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG.replace("draws 8 mA", "draws    8   mA"))
    assert formatted(READER.parse(desk.here()[1])) == RIG
    desk.put(RIG.replace("draws 8 mA", "draws 8 8"))
    assert formatted(READER.parse(desk.here()[1])) is None


@pytest.mark.parametrize(
    ("new", "where"),
    [
        ("ab cd ef", 3),
        ("x ab cd ef", 5),  # two more characters before it
        ("ab cd efgh", 3),
        ("ab ef", None),  # it is gone
        ("ab cXd ef", None),  # it was edited
    ],
)
def test_a_span_is_carried_over_an_edit(new: str, where: int | None) -> None:
    found = carried(Span(Source("a.rig", "ab cd ef"), 3, 5), Source("a.rig", new))
    assert (None if found is None else found.start) == where
    assert found is None or found.text == "cd"


def test_typed_puts_a_line() -> None:
    assert typed("b", "a", "a\nc") == "a\nb\nc"


def _asked(desk: Desk) -> tuple:  # type: ignore[type-arg]
    draft, source, offset = desk.here()
    return draft, desk.session.computed(desk.path), source, offset
