"""In each other's way, in tenths of a millimetre, worked by hand; and the same answers as the checks give, on random places."""

from __future__ import annotations

import random

import pytest

from laying.rigs_to_place import board_and_rig
from laying.small_boards import unit
from rigc.analysis.deck.checks.bodies_overlap import bodies_overlap
from rigc.analysis.laying.search.board import Board, Tier
from rigc.analysis.laying.search.conflicts import Solid, in_the_way, off_the_deck
from rigc.analysis.leads.plugs.plug_clash import PlugClash
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Level
from rigc.model.deck import Place

BOARD = Board(4000, 3000, 120, (1500,), (), air=20)
PLAIN = unit("plain", 600, 1000, ())
LEFT = unit("left", 600, 1000, (("left", 500),))
RIGHT = unit("right", 600, 1000, (("right", 500),))


def way(board: Board, one: object, other: object, dx: int, dy: int) -> int:
    return in_the_way(board, Solid(board, one.shapes[0], 500), (0, 0), Solid(board, other.shapes[0], 500), (dx, dy))  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("dx", "dy", "short"),
    [
        (600, 0, 0),  # bodies touch
        (590, 0, 10),
        (590, 997, 3),  # the shorter way out counts
    ],
)
def test_bodies(dx: int, dy: int, short: int) -> None:
    assert way(BOARD, PLAIN, PLAIN, dx, dy) == short


def test_facing_plugs_need_both_rooms_and_the_air_or_a_stagger() -> None:
    # 15 + 15 + 2 = 32 mm; past each other 16 + 2 = 18 mm aside at 15 + 2 = 17 mm
    assert way(BOARD, RIGHT, LEFT, 600 + 320, 0) == 0
    assert way(BOARD, RIGHT, LEFT, 600 + 310, 0) == 10
    assert way(BOARD, RIGHT, LEFT, 600 + 170, 180) == 0
    assert way(BOARD, RIGHT, LEFT, 600 + 170, 170) == 10
    assert way(BOARD, RIGHT, LEFT, 600 + 160, 180) == 20  # each of both plugs reaches a millimetre into the other's air


def test_a_plug_before_a_body_and_over_it() -> None:
    assert way(BOARD, RIGHT, PLAIN, 600 + 170, 0) == 0
    assert way(BOARD, RIGHT, PLAIN, 600 + 160, 0) == 10
    low = Solid(BOARD, PLAIN.shapes[0], 170)  # 17 mm tall: the plug's lowest side is at 17 mm
    assert in_the_way(BOARD, Solid(BOARD, RIGHT.shapes[0], 500), (0, 0), low, (600, 0)) == 0


def test_switches_too_near_in_both_directions() -> None:
    board = BOARD.replace(aside=700, behind=1300)
    stomp = PLAIN.replace(shapes=(PLAIN.shapes[0].replace(switches=((300, 250),)),))
    assert way(board, stomp, stomp, 700, 0) == 0
    assert way(board, stomp, stomp, 690, 0) == 10
    assert way(board, stomp, stomp, 0, 1300) == 0
    assert way(board, stomp, stomp, 0, 1297) == 3


def test_the_deck_and_what_is_kept_free() -> None:
    solid = Solid(BOARD, RIGHT.shapes[0], 500)
    assert off_the_deck(BOARD, solid, (4000 - 750, 2000), under=False) == 0
    assert off_the_deck(BOARD, solid, (4000 - 740, 2005), under=False) == 15
    free = BOARD.replace(kept_free=((0, 0, 100, 3000),))
    assert off_the_deck(free, solid, (95, 0), under=False) == 5


@pytest.mark.parametrize(
    ("y", "upper", "short"),
    [
        (230, 420, 0),  # the plug with its air ends where the lower tier begins: 23 + 100 + 15 + 2 = 140 mm
        (250, 420, 20),  # 2 mm in it: the plug's lowest side is at 17 mm, and the tier 25 mm high
        (1400, 420, 0),  # from the lower tier the upper one is 17 mm high: the plug passes over it
        (1400, 430, 120),  # 140 + 100 + 15 + 2 = 257 mm, and the upper one begins at 245
        (2450, 430, 0),  # on the upper one nothing is before it
    ],
)
def test_a_plug_is_lifted_by_the_tier_its_thing_stands_on(y: int, upper: int, short: int) -> None:
    board = BOARD.replace(depth=4000, tiers=(Tier(1400, 2450, 250), Tier(2450, 4000, upper)))
    solid = Solid(board, unit("rear", 600, 1000, (("rear", 300),)).shapes[0], 500)
    assert off_the_deck(board, solid, (1000, y), under=False) == short


@pytest.mark.parametrize("seed", range(60))
def test_the_checks_find_nothing_exactly_where_nothing_is_in_the_way(seed: int) -> None:
    """Two units of a rig at random places near each other: no overlap (bodies-overlap) and no plug that meets anything (plugs-collide)."""
    board, rig, _ = board_and_rig("long-haul")
    dice = random.Random(seed)
    one, other = dice.sample([number for number, item in enumerate(board.items) if not item.under], 2)
    here = (3000, 1500)
    there = (3000 + 10 * dice.randint(-110, 110), 1500 + 10 * dice.randint(-130, 130))
    names = (board.items[one].name, board.items[other].name)
    spots = {
        name: Place(name, x / 10, y / 10, 0, False, None, None, None, "", rig.end)
        for name, (x, y) in zip(names, (here, there), strict=True)
    }
    placed = rig.replace(places=spots)
    made = Results(placed)
    clash = made.get(PlugClash)
    overlaps = [
        each
        for each in made.call(bodies_overlap)
        if each.level is Level.ERROR and len(each.subject) == 2 and set(each.subject) == set(names)
    ]
    bare = board.replace(apart=0, aside=0)
    solids = [Solid(bare, board.items[number].shapes[0], board.items[number].height) for number in (one, other)]
    clear = in_the_way(bare, solids[0], here, solids[1], there) == 0
    assert clear == (not overlaps and not [each for each in clash.meetings if each.plug.thing != each.thing])
