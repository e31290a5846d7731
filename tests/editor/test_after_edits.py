"""What an editor is told after any edits, of which each takes over what the one before had computed, is what a first look tells: words,
places and mends; and what an edit does not touch is not computed again."""

from __future__ import annotations

import random
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from cases import READER, ROOT
from dealt_faults import dealt_fault

from editor.desk import LEADS, STARTER, Desk
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.analysis.weight.mass import Mass
from rigc.editor.session import Checked, Session
from rigc.record import Record
from rigc.source import Span

RIG = STARTER + LEADS
BEDROOM = ROOT / "examples" / "back-bedroom" / "board.rig"


class Stopped(Exception):
    """Somebody typed on."""


def edited(dice: random.Random, text: str) -> str:
    """The text after one edit such as people make: a slip, a remark, the beginning of a line, a line less, made a remark, joined with the
    one before or indented, another digit."""
    way = dice.randrange(9)
    if way < 2:
        return dealt_fault(text, dice.randrange(1_000_000))
    at = dice.choice([found.end() for found in re.finditer(r"\n", text)])
    if way == 2:
        return f"{text[:at]}# a remark\n{text[at:]}"
    if way == 3:
        return f"{text[:at]}  dr\n{text[at:]}"
    if way == 4:
        return text[:at] + text[at:].partition("\n")[2]
    if way < 8:
        return {5: f"{text[:at]}  # {text[at:]}", 6: f"{text[: at - 1]} {text[at:]}", 7: f"{text[:at]}   {text[at:]}"}[
            way
        ]
    at = dice.choice([found.start() for found in re.finditer(r"\d", text)])
    return f"{text[:at]}{dice.randrange(10)}{text[at + 1 :]}"


def stopping(after: int) -> Callable[[], None]:
    """Raises `Stopped` before the computation that follows so many."""
    calls = iter(range(after))

    def between() -> None:
        if next(calls, None) is None:
            raise Stopped

    return between


def plain(value: Any) -> Any:
    """A finding with its places as file, from where to where, and text."""
    if isinstance(value, Span):
        return value.source.name, value.start, value.end, value.text
    if isinstance(value, Record):
        return type(value).__name__, *(plain(getattr(value, name)) for name in value.FIELDS if name != "page")
    return tuple(map(plain, value)) if isinstance(value, tuple) else value


def told(checked: Checked) -> Counter[str]:
    """Each finding in full."""
    return Counter(repr(plain(each)) for each in checked.compiled.findings)


def fresh(path: Path, text: str) -> Checked:
    """A first look at a text."""
    session = Session(READER)
    session.put(path, text)
    return session.check(path)


def one_after_the_other(path: Path, seed: int, edits: int) -> int:
    """So many edits of a file, some of them while it is still being computed; how many values were taken over in all."""
    session, dice, first, taken = Session(READER), random.Random(seed), path.read_text("utf-8"), 0
    text = first
    for _ in range(edits):
        text = edited(dice, first if dice.randrange(4) == 0 else text)
        session.put(path, text)
        if dice.randrange(4) == 0:
            try:
                session.check(path, stopping(dice.randrange(60)))
            except Stopped:
                text = edited(dice, text)
                session.put(path, text)
        checked = session.check(path)
        alone = fresh(path, text)
        assert told(checked) == told(alone)
        if checked.computed is not None and alone.computed is not None:
            here, there = checked.computed.reasoning.by_name, alone.computed.reasoning.by_name
            assert {name: plain(here[name]) for name in here} == {name: plain(there[name]) for name in there}
            taken += len(checked.computed.results.taken)
    return taken


def test_the_same_is_told_after_any_edits() -> None:
    assert one_after_the_other(BEDROOM, 3, 6) > 100


@pytest.mark.long
@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("board", ["back-bedroom", "tide-line", "long-haul"])
def test_the_same_is_told_after_any_edits_of_any_board(board: str, seed: int) -> None:
    assert one_after_the_other(ROOT / "examples" / board / "board.rig", seed, 60) > 1000


def test_a_place_that_comes_from_a_line_that_is_read_again_goes_with_it(tmp_path: Path) -> None:
    """A line that can't be read keeps what was parsed before it; the places in that are not those of what is computed."""
    texts = (
        RIG.replace("draws 8 mA", "draws 800 mA"),
        f"# a remark\n{RIG}".replace("draws 8 mA", "draws 800 mA\n  dr"),
        f"# a remark, longer\n{RIG}".replace("draws 8 mA", "draws 800 mA"),
    )
    desk = Desk(tmp_path, texts[0])
    for text in texts:
        desk.put(text)
        desk.check()
        assert told(desk.session.check(desk.path)) == told(fresh(desk.path, text)) != Counter()


def test_only_what_reads_a_fact_is_computed_again(tmp_path: Path) -> None:
    """A heavier unit changes what the board weighs, not where its leads lie nor what sounds; a remark changes nothing."""
    desk = Desk(tmp_path, RIG)
    kinds = (AudioGraph, CableLengths, Mass)

    def values() -> list[Any]:
        desk.check()
        known = desk.session.computed(desk.path)
        assert known is not None
        return [known.get(kind) for kind in kinds]

    first = values()
    desk.put(RIG.replace("mass 400 g", "# a remark\n  mass 400 g"))
    assert [one is other for one, other in zip(first, values(), strict=True)] == [True, True, True]
    desk.put(RIG.replace("mass 400 g", "mass 450 g"))
    assert [one is other for one, other in zip(first, values(), strict=True)] == [True, True, False]
