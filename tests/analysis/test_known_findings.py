"""Checks that read nothing that an edit touched are not asked again, and the same is found, told and advised as without anything kept."""

from __future__ import annotations

import pytest
from cases import READER, ROOT
from dealt_faults import dealt_fault
from shelf import Shelf

from rigc.analysis.every_check import Check, check
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.compile import compile_rig
from rigc.diagnostics.terminal import text
from rigc.files.disk import Disk
from rigc.proved import Bench

BOARDS = ("back-bedroom", "tide-line", "harbour-keys", "long-haul-d")
BEDROOM = (ROOT / "examples/back-bedroom/board.rig").read_text("utf-8")
HEAVIER = BEDROOM.replace("mass 0.35 kg", "mass 0.36 kg", 1)


def told(rig: str, kept: Kept, board: str = "back-bedroom") -> str:
    """What a person reads of it, each mend tried."""
    disk = Disk(ROOT / "examples" / board / "board.rig", root=ROOT, given=rig.encode())
    made = compile_rig(disk, disk.name, READER, kept=kept)
    bench = Bench(made, disk, disk.name, READER)
    return text([bench.proved(each) for each in made.findings], colour=False)


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the checks that were asked, as often as they were."""
    names: list[str] = []

    def noted(name: str) -> Check:
        names.append(name)
        return check(name)

    monkeypatch.setattr("rigc.analysis.findings.findings.check", noted)
    return names


def test_only_what_reads_a_fact_is_asked_again(asked: list[str]) -> None:
    """What a unit weighs is read by what judges masses and all facts; where places in the source have moved, by nothing. Of another rigc nothing is known."""
    kept = Kept(shelf := Shelf())
    told(BEDROOM, kept)
    asked.clear()
    told(f"# a remark\n\n{BEDROOM}", kept)
    assert asked == []
    told(HEAVIER, kept)
    strips, facts = {"weak_strip", "held_by_nothing"}, {"limit_in_doubt", "old_fact", "future_fact", "far_date"}
    assert set(asked) == {"too_heavy", "tips_over"} | strips | facts
    asked.clear()
    told(HEAVIER, Kept(shelf, lambda: "another"))
    assert len(set(asked)) > 90


@pytest.mark.parametrize("spoiled", [b"[", b'["", [["board.rig", "", ""]], {}, {"too_heavy": [[7], ""]}]'])
def test_what_is_none_of_ours_is_not_heeded(spoiled: bytes) -> None:
    shelf = Shelf()
    first = told(BEDROOM, Kept(shelf))
    assert shelf
    shelf.update(dict.fromkeys(shelf, spoiled))
    assert told(BEDROOM, Kept(shelf)) == first


def one_after_the_other(board: str, edits: list[str]) -> None:
    kept = Kept(Shelf())
    for edited in edits:
        assert told(edited, kept, board) == told(edited, NOTHING_KEPT, board)


def test_the_same_is_told_after_edits() -> None:
    """A fact, a line before all others with a mistake behind it, what a mend reads, and back."""
    first, second = BEDROOM.index("\nunit"), BEDROOM.index("\nunit", BEDROOM.index("\nunit") + 1)
    turned = BEDROOM[:first] + BEDROOM[second:] + BEDROOM[first:second]
    more = BEDROOM.replace("draws 22 mA", "draws 120 mA")
    one_after_the_other("back-bedroom", [BEDROOM, more, f"# first\n{more}".replace("mass 0.43", "mass 4.43"), turned])


@pytest.mark.long
@pytest.mark.parametrize("board", BOARDS)
def test_the_same_is_told_after_any_slips(board: str) -> None:
    text = (ROOT / "examples" / board / "board.rig").read_text("utf-8")
    one_after_the_other(board, [text, *(dealt_fault(text, seed) for seed in range(40))])
