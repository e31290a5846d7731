"""Letters stand free in every drawing of a deck, in the flow, the one-line and the overlay: counted from their SVG, on the worked
boards and on rigs dealt by dice."""

from __future__ import annotations

import re
from collections.abc import Iterable
from random import Random

import pytest
from cases import READER, ROOT, sheet_of
from dealt_decks import dealt, dealt_deck
from svg_collisions import collisions, painted
from two_boards import LONG_HAUL, results_after

from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.output.svg import inline
from rigc.reports.content import Drawing, Sheet
from rigc.reports.drawings.shapes import Box, Circle, Label, Line
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.deck.plan_full_size import plan_full_size
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.record.overlay import overlay
from rigc.reports.sheets.stage.crew_card import crew_card
from rigc.reports.sheets.stage.signal_flow import signal_flow
from rigc.source import Source

EXAMPLES = sorted(path.parent.name for path in (ROOT / "examples").glob("*/board.rig"))
SAME = {"long-haul": pytest.mark.long}
"""The board of its revision D is all but the same."""
DECK = (crew_card, deck_drawing, plan_full_size)
DEALT = 30


def seeds(*daily: int) -> list[object]:
    """All that are dealt; those with few units in the daily run."""
    return [seed if seed in daily else pytest.param(seed, marks=pytest.mark.long) for seed in range(DEALT)]


def drawings(sheets: Iterable[Sheet]) -> dict[str, str]:
    """Each drawing as SVG, by its name."""
    blocks = [block for sheet in sheets for block in sheet.blocks]
    return {block.name: inline(block, "x") for block in blocks if isinstance(block, Drawing)}


def faults(svgs: dict[str, str]) -> dict[str, list[str]]:
    """By drawing, what collides."""
    return {name: told for name, svg in svgs.items() if (told := collisions(svg))}


@pytest.mark.parametrize("board", [pytest.param(each, marks=SAME.get(each, ())) for each in EXAMPLES])
def test_nothing_collides_on_the_worked_boards_and_every_name_is_in_its_place(board: str) -> None:
    svgs = drawings([sheet_of(f"examples/{board}/board.rig", sheet) for sheet in DECK])
    assert faults(svgs) == {}
    assert [name for name, svg in svgs.items() if "Without room" in svg] == []


@pytest.mark.parametrize("seed", seeds(1, 4, 17))
def test_nothing_collides_on_dealt_rigs(seed: int) -> None:
    of = dealt(seed)
    svgs = drawings(of.call(sheet) for sheet in (*DECK, signal_flow, power_table))
    assert {"flow", "plan-plate"} <= set(svgs)
    assert faults(svgs) == {}
    assert [name for name, svg in svgs.items() if "Without room" in svg] == []
    texts = " ".join(text.words for name, svg in svgs.items() if "-plate" in name for text in painted(svg).texts)
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
    svgs = drawings([made.results.call(overlay)])
    assert "overlay-plate-above" in svgs
    assert faults(svgs) == {}


def all_moved(text: str) -> str:
    """Everything that has a place stands 3 mm further to the right; revision D."""
    moved = re.sub(r" at (\d+), (\d+) mm$", lambda at: f" at {int(at[1]) + 3}, {at[2]} mm", text, flags=re.MULTILINE)
    return moved.replace("revision C", "revision D")


def test_nothing_collides_where_everything_moved_and_every_change_has_its_number() -> None:
    svgs = drawings([results_after(LONG_HAUL, all_moved(LONG_HAUL)).call(overlay)])
    assert faults(svgs) == {}
    numbers = {text.words for svg in svgs.values() for text in painted(svg).texts if text.words.isdigit()}
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
