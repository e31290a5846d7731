"""Routes against boards that were worked by hand on paper, and each rule of the route model alone.

The model is common practice, no source; what follows from it is geometry. All figures here are tenths of a millimetre.
"""

from __future__ import annotations

import back_bedroom
import long_haul
import pytest
from boards_by_hand import Stand, board, deck, lead, level, panel, routed, stand, stretches
from worked_rows import Row, worked_rows

from rigc.analysis.leads.lengths.cable_routes import Route
from rigc.model.deck import Tier
from rigc.model.rig import Rig

PLATE = deck(600, 400, 10, 150, 350)
RIGHT = stand("right", 300, 20, "60 100 50", "in:R50/20 out:L50/20 back:B30/30")
LEFT = stand("left", 200, 20, "60 100 50", "in:R50/25 out:L50/25")


def neighbour(y: float) -> Stand:
    return stand("left", 200, y, "60 100 50", "in:R50/25 out:L50/25")


@pytest.mark.parametrize(
    ("rig", "row"),
    [
        *((back_bedroom.BOARD, row) for row in worked_rows(back_bedroom.ROWS)),
        *((long_haul.BOARD, row) for row in worked_rows(long_haul.ROWS)),
    ],
    ids=lambda value: value.lead.mark if isinstance(value, Row) else "",
)
def test_worked_board(rig: Rig, row: Row) -> None:
    route = routed(rig, row.lead)[row.lead.mark]
    assert route.kind == row.kind
    assert route.exits == row.exits
    assert tuple(drop for drop in route.drops if drop is not None) == row.drops
    assert stretches(route) == row.horizontal + row.vertical
    assert route.length == sum(row.horizontal) + sum(row.vertical)


def run(*others: Stand, start: str = "right.out", end: str = "left.in", left: Stand = LEFT, **more: object) -> Route:
    """The route between the two units of this page, flat plugs at both ends (exit 8 mm)."""
    return routed(board(PLATE, RIGHT, left, *others), lead("A1", start, end, "flat flat", **more))["A1"]


def test_neighbours_in_a_row_run_direct() -> None:
    # exits (300 - 8, 20 + 50) and (260 + 8, 70): 24 aside; heights 20 and 25
    route = run()
    assert (route.kind, route.exits, route.drops) == ("direct", ((2920, 700), (2680, 700)), (None, None))
    assert (stretches(route), route.length) == ((240, 0, 50), 290)


def test_front_edges_5_mm_apart_are_one_row() -> None:
    assert level(run(left=neighbour(25))) == (240, 50)


def test_a_tenth_more_is_another_row() -> None:
    # down at 150: 150 - 70 = 80 and 150 - 75.1 = 74.9; heights 20 + 10 + 10 and 25 + 10 + 10
    route = run(left=neighbour(25.1))
    assert (route.kind, stretches(route)) == ("under", (240, 800, 0, 749, 400, 450))


def test_a_third_unit_between_sends_it_under() -> None:
    assert run(stand("third", 270, 60, "20 20 30", "")).kind == "under"


def test_a_third_unit_behind_the_shared_depth_does_not() -> None:
    assert run(stand("third", 270, 120, "20 20 30", "")).kind == "direct"


def test_a_third_unit_that_only_touches_the_facing_edges_does_not() -> None:
    assert run(stand("third", 240, 120, "20 100 30", ""), stand("fourth", 300, 120, "20 100 30", "")).kind == "direct"


def test_what_hangs_between_them_below_the_deck_does_not() -> None:
    assert run(stand("third", 270, 60, "20 20 30", "", under=True)).kind == "direct"


def test_the_second_bend_is_tried() -> None:
    # from the rear jack (330, 128): first along y = 128 behind both, then x = 268; the other way goes through the unit
    assert level(run(start="right.back")) == (620, 580)


def test_a_path_through_their_own_bodies_is_not_free() -> None:
    assert run(start="right.in").kind == "under"  # (368, 70) to (268, 70): straight through the right unit


def test_a_path_along_an_edge_is_free() -> None:
    touching = stand("third", 200, 128, "200 40 30", "")
    assert run(touching, start="right.back").kind == "direct"


def test_the_source_may_send_it_under() -> None:
    assert level(run(run="under")) == (240, 800, 0, 800)


def test_the_source_may_send_it_over() -> None:
    assert level(run(left=neighbour(200), run="over")) == (240, 1800)


def test_over_is_impossible_from_below() -> None:
    route = run(left=stand("left", 200, 20, "60 100 50", "in:R50", under=True), run="over")
    assert (route.length, route.missing) == (None, False)
    assert route.reason == "it shall run over the deck, but 'left.in' is not on top of it"


@pytest.mark.parametrize(("other_y", "drop"), [(300, 2000), (0, 1000), (100, 1000)])
def test_tied_drop_lines(other_y: float, drop: int) -> None:
    # 150 is halfway between the lines 100 and 200: the one nearer to the other end (y = other_y + 50), then the smaller
    near = stand("near", 100, 100, "40 100 50", "out:R50/20")
    far = stand("far", 300, other_y, "40 100 50", "in:L50/20")
    route = routed(
        board(deck(600, 500, 10, 200, 100), near, far), lead("A1", "near.out", "far.in", "flat flat", run="under")
    )
    assert route["A1"].drops[0] == drop


@pytest.mark.parametrize(
    ("x", "under", "drop"),
    [(280, False, 3500), (280, True, 3500), (292, False, 1500), (272, True, 1500)],
    ids=["covered above", "covered below", "on a left edge", "on a right edge"],
)
def test_covered_drop_lines(x: float, under: bool, drop: int) -> None:
    # the lead leaves at x = 292, y = 70; a thing 20 wide stands or hangs over the line y = 150 from x on
    cover = stand("cover", x, 140, "20 20 30", "", under=under)
    assert run(cover, run="under").drops[0] == drop


def test_both_ends_choose_their_own_line() -> None:
    # the right end's x = 292 is covered at 150, the left end's x = 268 is not
    route = run(stand("cover", 285, 140, "20 20 30", ""), run="under")
    assert (route.drops, level(route)) == ((3500, 1500), (240, 2800, 2000, 800))


def test_no_free_line_at_all() -> None:
    route = run(stand("wall", 280, 140, "20 250 30", ""), run="under")
    assert (route.length, route.missing) == (None, False)
    assert route.reason == "every drop line is covered at x = 292 mm, where it leaves 'right.out'"


UNDER = stand("below", 100, 200, "100 60 40", "one:F20 two:B80", under=True)
REAR = panel("rear", l=(500, 390), r=(550, 390))


@pytest.mark.parametrize(
    ("start", "end", "plugs", "drops", "horizontal", "vertical"),
    [
        # (120, 192) and (180, 268), both below: 60 aside, 76 back; 10 each; round its own body, whose right edge is x = 200:
        # 80 + 20 instead of 60 aside (nobody knows whether there is room beneath it)
        ("below.one", "below.two", "flat flat", (None, None), (600, 760, 400), (100, 100)),
        # panel jacks have no face: (500, 390) and (550, 390)
        ("rear.l", "rear.r", "panel panel", (None, None), (500, 0), (100, 100)),
        ("below.two", "rear.l", "flat panel", (None, None), (3200, 1220), (100, 100)),
        # (292, 70) to its line 150, on to 192 below; 20 + 10 + 10 and 10
        ("right.out", "below.one", "flat flat", (1500, None), (1720, 800, 420), (400, 100)),
        ("rear.l", "right.out", "panel flat", (None, 1500), (2080, 2400, 800), (100, 400)),
    ],
)
def test_ends_below_and_at_a_panel(
    start: str,
    end: str,
    plugs: str,
    drops: tuple[int | None, ...],
    horizontal: tuple[int, ...],
    vertical: tuple[int, ...],
) -> None:
    route = routed(board(PLATE, RIGHT, UNDER, panels=(REAR,)), lead("A1", start, end, plugs))["A1"]
    assert (route.kind, route.drops, stretches(route)) == ("under", drops, horizontal + vertical)


def test_a_raised_tier_adds_to_the_height() -> None:
    raised = deck(600, 400, 10, 150, 350, tiers=(Tier("rear", 200, 400, 45, RIGHT[1].span),))
    left = stand("left", 200, 220, "60 100 50", "in:R50/25", tier="rear")
    route = routed(board(raised, RIGHT, left), lead("A1", "right.out", "left.in", "flat flat"))["A1"]
    assert stretches(route)[-2:] == (200 + 200, 250 + 450 + 200)


@pytest.mark.parametrize(
    ("turned", "exit_point"),
    [
        # jack on the right, 30 from the front, of a body 60 x 100 whose outline starts at (100, 100); plug exit 8
        (0, (1680, 1300)),  # (100 + 60 + 8, 100 + 30)
        (90, (1700, 1680)),  # its right side looks back: (100 + 100 - 30, 100 + 60 + 8)
        (180, (920, 1700)),  # looks left: (100 - 8, 100 + 100 - 30)
        (270, (1300, 920)),  # looks to the front: (100 + 30, 100 - 8)
    ],
)
def test_turned_units(turned: int, exit_point: tuple[int, int]) -> None:
    unit = stand("turned", 100, 100, "60 100 50", "out:R30/20", turned=turned)
    route = routed(board(PLATE, RIGHT, unit), lead("A1", "turned.out", "right.in", "flat flat"))["A1"]
    assert route.exits[0] == exit_point


def test_a_turned_unit_covers_its_turned_outline() -> None:
    # turned by 90 degrees it is 100 wide: from 200 to 300 it fills the gap beside the right unit
    left = stand("left", 200, 20, "60 100 50", "in:R50/25", turned=90)
    route = routed(board(PLATE, RIGHT, left), lead("A1", "right.out", "left.in", "flat flat"))["A1"]
    assert route.kind == "under"  # (292, 70) lies inside it


def test_a_captive_lead_starts_at_its_jack() -> None:
    route = run(captive=lead("A1", "right.out", "left.in", "flat flat").end, ends=("flat", None))
    assert route.exits[1] == (2600, 700)


@pytest.mark.parametrize(
    ("rig", "reason", "about"),
    [
        (board(None, RIGHT, LEFT), "a deck", ""),
        (board(PLATE, RIGHT, LEFT, places={}), "a place for any thing", ""),
        (board(PLATE, RIGHT, LEFT, places={"right": RIGHT[1]}), "the place of 'left'", "left"),
        (board(deck(600, 400, 10), RIGHT, neighbour(200)), "the drop lines of deck 'board'", "board"),
        (board(deck(600, 400, None, 150), RIGHT, neighbour(200)), "the thickness of deck 'board'", "board"),
        (board(PLATE, RIGHT, stand("left", 200, 200, "60 100 50", "in:R50")), "how high 'left.in' is", "left"),
    ],
)
def test_a_missing_fact_is_named(rig: Rig, reason: str, about: str) -> None:
    route = routed(rig, lead("A1", "right.out", "left.in", "flat flat"))["A1"]
    assert (route.length, route.reason, route.about, route.missing) == (None, reason, about, True)


def test_an_end_that_no_plug_fits() -> None:
    route = run(ends=(None, "flat"))
    assert (route.reason, route.about) == ("a plug kind in the stock that fits 'right.out'", "right")
