"""Swaps that are stated of the built board: the revision before is seen with them made. Boards are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import READER
from small_rigs import HEAD, block, unit
from touring_copy import SUCCESSOR, touring

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.compile import Compiled, compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.files.disk import Disk
from rigc.model.jacks import Port
from rigc.source import Source

NOTE = 'field-note 3 2026-05-02 "the pitch unit fell" by "R.K."\n'
SWAP = "as-built C {\n  swap stepladder for twin field-note 3\n}\n"
FOLLOWS = ('revision C 2026-03-02 "touring board, 18 units"\n', 'revision D 2026-06-02\n  follows C "board.rig"\n')


def after(folder: Path, old: str, new: str, *changes: tuple[str, str]) -> Compiled:
    """Revision D of the touring board, its text changed, that follows C; both with further statements."""
    board = touring(folder, old)
    text = touring(folder, new, "d.rig").read_text("utf-8")
    for before, now in (FOLLOWS, *changes):
        assert before in text, before
        text = text.replace(before, now)
    (board.parent / "d.rig").write_text(text, "utf-8")
    disk = Disk(board.parent / "d.rig", folder)
    return compile_rig(disk, disk.name, READER)


def before(made: Compiled) -> Results:
    assert made.results is not None, [each.message for each in made.findings]
    results = made.results.get(Previous).results
    assert results is not None, [each.message for each in made.findings]
    return results


def told(made: Compiled) -> list[Diagnostic]:
    return [each for each in made.findings if each.kind.name in ("no-comparison", "unmade-swap")]


@pytest.mark.parametrize(("old", "new"), [(NOTE + SWAP, ""), ("", NOTE + SWAP), (NOTE + SWAP, NOTE + SWAP)])
def test_the_board_has_the_substitute(tmp_path: Path, old: str, new: str) -> None:
    """Whether the old source says so, the new one, or both: same corner, same outlet, same lead numbers.

    The leads keep the lengths that they were made with for the unit before: 830, 710 and 640 mm."""
    made = after(tmp_path, old, new)
    stood = before(made)
    assert told(made) == []
    outlines = stood.get(Placement).outlines
    assert "stepladder" not in outlines
    assert (outlines["twin"].x_mm, outlines["twin"].y_mm) == (470, 325)
    fed = stood.get(PowerAssignment).of("twin")
    assert fed is not None and fed.outlets == (Port("mill8", "a8"),)
    mine = [lead for lead in stood.get(Leads).all if "twin" in (lead.start.thing, lead.end.thing)]
    assert [(lead.mark, lead.made_mm.value if lead.made_mm else 0) for lead in mine] == [
        ("A14", 830), ("A15", 710), ("D08", 900),
    ]  # fmt: skip


def test_a_unit_that_only_the_new_source_declares(tmp_path: Path) -> None:
    """Its declaration is taken over; so is that of the unit that it is like."""
    declared = SUCCESSOR.replace("stepladder-ii", "newcomer") + 'unit second like newcomer {\n  serial "2"\n}\n'
    swap = SWAP.replace("twin", "second")
    made = after(tmp_path, "", declared + NOTE + swap)
    stood = before(made)
    assert told(made) == []
    assert stood.rig.units["second"].width_mm is not None and stood.rig.units["second"].width_mm.value == 110
    assert "second" in stood.get(Placement).outlines


def test_two_swaps_in_turn_and_back(tmp_path: Path) -> None:
    swaps = "as-built C {\n  swap stepladder for twin field-note 3\n  swap twin for stepladder-ii field-note 3\n}\n"
    assert "stepladder-ii" in before(after(tmp_path, NOTE + swaps, "")).rig.places
    back = "as-built C {\n  swap stepladder for twin field-note 3\n  swap twin for stepladder field-note 3\n}\n"
    assert before(after(tmp_path, NOTE + back, "")).rig.places.keys() >= {"stepladder"}


def test_a_swap_of_another_revision_does_not_count(tmp_path: Path) -> None:
    made = after(tmp_path, NOTE + SWAP.replace("as-built C", "as-built B"), "")
    assert "stepladder" in before(made).rig.places
    assert told(made) == []


@pytest.mark.parametrize(
    ("swap", "why"),
    [
        ("swap hot for twin", "'hot' is declared, but nothing of this rig uses it"),
        ("swap stepladder for marl", "'marl' is in use already: loop 4 of signalbox holds marl"),
        ("swap stepladder for spare-amp", "'stepladder' is a unit, 'spare-amp' is an amp"),
        ("swap stepladder for stepladder", "'stepladder' can't stand in for itself"),
    ],
)
def test_a_swap_that_can_not_be_followed_is_told(tmp_path: Path, swap: str, why: str) -> None:
    made = after(tmp_path, f"as-built C {{\n  {swap}\n}}\n", "")
    (finding,) = told(made)
    assert finding.kind.name == "unmade-swap"
    assert f"can't be followed in revision C: {why}" in finding.message
    assert "stepladder" in before(made).rig.places


def test_what_falls_away_is_told(tmp_path: Path) -> None:
    """The right side, MIDI and the treadle have nowhere to go at a mono unit: 2 hops, 2 links, 1 channel, 4 leads, 4 programs."""
    made = after(tmp_path, NOTE + SWAP.replace("swap stepladder", "swap lantxl"), "")
    (finding,) = told(made)
    assert finding.level.word == "remark"
    assert finding.message == (
        "with 'twin' in the place of 'lantxl' something fell away: weathervane => lantxl: 'twin' has no pair of inputs; mono "
        "from here on (and 12 more)"
    )
    assert "twin" in before(made).rig.places


def test_the_only_thing_that_falls_away_is_told_alone() -> None:
    """The fuzz that went in takes no power: its lead is tied back, and there is nothing more."""
    played = "instrument guitar {\n}\namp combo {\n  input in ts\n}\n" + unit("new", "passive")
    played += block("supply", "mill", "connector barrel 5.5 x 2.1 mm", "outlet o1 9 V dc 200 mA isolated")
    played += (
        unit("old", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc")
        + "chain guitar -> old -> combo\npower {\n  old from mill.o1\n}\n"
    )
    second = HEAD.replace("revision A 2026-03-02", 'revision B 2026-06-02\n  follows A "a.rig"') + played
    texts = {"a.rig": HEAD + played + "as-built A {\n  swap old for new\n}\n", "b.rig": second}
    (finding,) = told(compile_rig(lambda name: Source(name, texts[name]), "b.rig", READER))
    assert finding.message == (
        "with 'new' in the place of 'old' something fell away: old from mill.o1: 'new' takes no power; tie that lead back"
    )


def test_a_renamed_unit_was_swapped() -> None:
    """C states a swap of `old`, which D calls `pitcher`: it is one of it."""
    played = "instrument guitar {\n}\namp combo {\n  input in ts\n}\n" + unit("new")
    first = HEAD + played + unit("old") + "chain guitar -> old -> combo\nas-built A {\n  swap old for new\n}\n"
    second = HEAD.replace("revision A 2026-03-02", 'revision B 2026-06-02\n  follows A "a.rig"') + played
    second += unit("pitcher", "was old") + "chain guitar -> pitcher -> combo\n"
    texts = {"a.rig": first, "b.rig": second}
    made = compile_rig(lambda name: Source(name, texts[name]), "b.rig", READER)
    assert told(made) == []
    assert [str(each.end) for each in before(made).rig.connections] == ["new.in", "combo.in"]
