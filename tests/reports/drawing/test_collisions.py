"""Every drawing of rigs dealt by dice is as those of the worked boards are, and every name is in its place: on crowded boards some in
small letters."""

from __future__ import annotations

import re
from random import Random

import pytest
from cases import READER, ROOT
from dealt_decks import dealt, dealt_deck
from every_drawing import drawings, faults
from svg_collisions import collisions, painted
from two_boards import LONG_HAUL, results_after

from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.output.svg import inline
from rigc.reports.content import Drawing
from rigc.reports.drawings.shapes import Box, Circle, Label, Line
from rigc.reports.sheets.record.overlay import overlay
from rigc.source import Source

DEALT = 30


def seeds(*daily: int) -> list[object]:
    """All that are dealt; those with few units in the daily run."""
    return [seed if seed in daily else pytest.param(seed, marks=pytest.mark.long) for seed in range(DEALT)]


@pytest.mark.parametrize("seed", seeds(1, 4))
def test_every_drawing_of_dealt_rigs(seed: int) -> None:
    of = dealt(seed)
    drawn = drawings(of)
    assert {"signal-flow flow", "deck-drawing plan-plate"} <= set(drawn)
    assert faults(drawn, small=True) == {}
    texts = " ".join(
        text.words for name, each in drawn.items() if "-plate" in name for text in painted(inline(each, "x")).texts
    )
    assert set(of.rig.units) <= set(re.split(r"[ ;:]+", texts))


def changed(text: str, seed: int) -> str:
    """Some units moved, two of them swapped in the chain, as revision B."""
    dice = Random(seed)
    moved = re.sub(
        r"^  (\S+) (under )?at (\d+), (\d+) mm$",
        lambda at: (
            f"  {at[1]} {at[2] or ''}at {int(at[3]) + dice.choice((0, 2, 7))}, {int(at[4]) + dice.choice((0, 5))} mm"
        ),
        text,
        flags=re.MULTILINE,
    )
    path = re.search(r"^chain (.*)$", moved, re.MULTILINE)
    assert path is not None
    one, other = path[1].split(" -> ")[:2]
    swapped = f"chain {path[1].replace(one, 'first', 1).replace(other, one, 1).replace('first', other, 1)}"
    moved = moved.replace(path[0], swapped)
    return moved.replace("revision A 2026-03-02", 'revision B 2026-04-02\n  follows A "a.rig"')


@pytest.mark.parametrize("seed", seeds(1))
def test_nothing_collides_on_overlays_of_dealt_rigs(seed: int) -> None:
    texts = {"a.rig": dealt_deck(seed), "b.rig": changed(dealt_deck(seed), seed)}
    disk = Disk(ROOT / "b.rig", root=ROOT)
    made = compile_rig(lambda name: Source(name, texts[name]) if name in texts else disk(name), "b.rig", READER)
    assert made.results is not None, [finding.message for finding in made.findings]
    drawn = drawings(made.results, [overlay])
    assert "overlay overlay-plate-above" in drawn
    assert faults(drawn, small=True) == {}


def all_moved(text: str) -> str:
    """Everything that has a place stands 3 mm further to the right; revision D."""
    moved = re.sub(r" at (\d+), (\d+) mm$", lambda at: f" at {int(at[1]) + 3}, {at[2]} mm", text, flags=re.MULTILINE)
    return moved.replace("revision C", "revision D")


def test_nothing_collides_where_everything_moved_and_every_change_has_its_number() -> None:
    drawn = drawings(results_after(LONG_HAUL, all_moved(LONG_HAUL)), [overlay])
    assert faults(drawn) == {}
    texts = [text.words for each in drawn.values() for text in painted(inline(each, "x")).texts]
    numbers = {text for text in texts if text.isdigit()}
    assert {str(number) for number in range(1, 24)} <= numbers  # 19 things, a hole and three jacks


def drawn(*shapes: Label | Line | Box | Circle) -> list[str]:
    return collisions(inline(Drawing("bad", "Bad", "faults", 60, 30, shapes), "x"))


def test_the_count_sees_each_kind_of_fault() -> None:
    """Without this the tests above could not fail."""
    name = Label(10, 10, "marl")
    assert drawn(name) == []
    assert drawn(name, Label(12, 10, "lant")) == ["'marl' and 'lant'"]
    assert drawn(name, Line(5, 9, 30, 9)) == ["'marl' on a line at 13.7, 9.0"]
    assert [fault[:16] for fault in drawn(name, Box(9, 5, 3, 20))] == ["'marl' on a line"]
    assert "'marl' is covered" in drawn(name, Box(9, 5, 12, 20, fill="white"))
    assert drawn(Line(5, 9, 30, 9), Box(2, 2, 40, 20, fill="white"), name) == []
    assert drawn(Label(10, 10, "gap"), Line(5, 10.6, 30, 10.6)) != []  # a descender
    assert drawn(name, Line(5, 10.6, 30, 10.6)) == []
