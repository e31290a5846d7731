"""Results beside those of a rig that differs little: nothing is computed that reads no part that differs, and the same is found."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator

import pytest
from cases import READER, ROOT
from dealt_faults import dealt_fault

from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.results import Beside, Results
from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.compile import Compiled, compile_rig
from rigc.files.disk import Disk
from rigc.model.rig import Rig

BOARDS = {name: ROOT / "examples" / name / "board.rig" for name in ("back-bedroom", "tide-line", "long-haul")}
EDITS = (
    ("song ", 'bypass guitar -> combo "lead past the board"\n\nsong '),
    ("hedge at 150, 10 mm", "hedge at 145, 14 mm"),
    ("marl.in flat-angle to flat-angle", "marl.in barrel-angle to flat-angle"),
    ("tempo 126 bpm", "tempo 128 bpm"),
    ("plumb with mushroom", "plumb brackets"),
    ("draws 22 mA", "draws 120 mA"),
    ("drop 65, 145, 220, 302 mm", "drop 65, 220, 302 mm"),
)


@pytest.fixture(scope="module")
def base() -> Compiled:
    return made("back-bedroom", BOARDS["back-bedroom"].read_text("utf-8"))


def made(board: str, text: str, beside: Results | None = None) -> Compiled:
    load = Disk(BOARDS[board], root=ROOT, given=text.encode())
    near = None if beside is None else Beside(beside)
    return compile_rig(load, load.name, READER, advice=False, beside=near)


def found(compiled: Compiled) -> Counter[tuple[object, ...]]:
    return Counter(
        (each.kind.name, each.level, each.message, each.subject, each.accepted) for each in compiled.findings
    )


@pytest.mark.parametrize(("old", "new"), EDITS, ids=[new.partition("\n")[0] for _, new in EDITS])
def test_the_same_is_found(base: Compiled, old: str, new: str) -> None:
    text = BOARDS["back-bedroom"].read_text("utf-8")
    assert old in text
    edited = text.replace(old, new, 1)
    beside, alone = made("back-bedroom", edited, base.results), made("back-bedroom", edited)
    assert found(beside) == found(alone) != Counter()
    assert beside.results is not None
    assert beside.results.sound


@pytest.mark.long
@pytest.mark.parametrize("seed", range(40))
@pytest.mark.parametrize("board", BOARDS)
def test_the_same_is_found_after_any_slip(board: str, seed: int) -> None:
    text = BOARDS[board].read_text("utf-8")
    edited = dealt_fault(text, seed)
    assert found(made(board, edited, made(board, text).results)) == found(made(board, edited))


def test_what_reads_no_part_that_differs_is_not_computed(base: Compiled) -> None:
    """Where a unit stands changes the lengths of leads, not what sounds; remarks, which move every place in the source, reach nothing."""
    text = BOARDS["back-bedroom"].read_text("utf-8")
    assert base.results is not None
    moved = made("back-bedroom", text.replace("hedge at 150", "hedge at 149"), base.results).results
    remarked = made("back-bedroom", f"# a remark\n\n{text}", base.results).results
    assert moved is not None
    assert remarked is not None
    assert moved.get(AudioGraph) is remarked.get(AudioGraph) is base.results.get(AudioGraph)
    assert moved.get(CableLengths) is not base.results.get(CableLengths)
    assert remarked.get(CableLengths) is base.results.get(CableLengths)


def late(rig: Rig) -> Iterator[Callable[[], int]]:
    """A value that reads the rig only when it is asked."""
    yield lambda: len(rig.songs)


def test_a_part_that_is_read_late_is_seen(base: Compiled) -> None:
    assert base.results is not None
    old = Results(base.results.rig)
    old.found(late)
    fewer = old.rig.replace(songs=())
    beside = Results(fewer, beside=Beside(old))
    (count,) = beside.found(late)
    assert beside.sound
    assert count() == len(old.rig.songs)
    assert not beside.sound
    (count,) = beside.alone().found(late)
    assert count() == 0
