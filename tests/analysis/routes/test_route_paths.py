"""The ways of leads in plan: lanes, detours round what hangs low, ties, and what crosses or runs side by side; worked by hand."""

from __future__ import annotations

from itertools import pairwise

import pytest
from boards_by_hand import board, deck, fact, lead, level, routed, stand, stretches
from cases import ROOT, results
from written import changed, written

from rigc.analysis.deck.placement import Placement, placement
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.deck_boxes import deck_boxes
from rigc.analysis.routes.bundles import Bundles
from rigc.analysis.routes.crossings import BESIDE, FINE, TIED, Crossings
from rigc.analysis.routes.joint_savings import joint_saving
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import LeadWishes

PLATE = deck(600, 400, 10, 150, 350)
RIGHT = stand("right", 400, 20, "60 100 50", "out:L50/20")
LEFT = stand("left", 100, 200, "60 100 50", "in:R50/25")
BESIDE_CASES = ROOT / "tests/analysis/checks/cases/lead-beside-power"


def under(rig: Rig) -> Route:
    """From (392, 70), dropping at 150, to (168, 250), where 150 and 350 tie and the one nearer to the other end is taken."""
    return routed(rig, lead("A1", "right.out", "left.in", "flat flat"))["A1"]


def test_without_lanes_it_is_the_hand_model() -> None:
    route = under(board(PLATE, RIGHT, LEFT))
    assert (route.drops, level(route), route.lane, route.more) == ((1500, 1500), (2240, 800, 0, 1000), None, 0)


@pytest.mark.parametrize(
    ("lanes", "lane", "along"),
    [
        ((("audio", 150.0),), 1500, (800, 0, 0, 1000)),
        ((("audio", 60.0),), 600, (800, 900, 900, 1000)),  # to its drop line, on to the lane in front of it, and back
        ((("audio", 60.0), ("audio", 200.0)), 2000, (800, 500, 500, 1000)),  # the lane that costs less
        ((("dc", 60.0),), None, (800, 0, 1000)),  # another class's
    ],
)
def test_a_stated_lane(lanes: tuple[tuple[str, float], ...], lane: int | None, along: tuple[int, ...]) -> None:
    route = under(board(PLATE, RIGHT, LEFT, lead_wishes=LeadWishes(lanes=lanes)))
    assert (route.lane, level(route)) == (lane, (2240, *along))


def hanging(height: float, clearance: float, width: int = 100, y: float = 120) -> Rig:
    """A supply across the line y = 150 from x = 220 to 320, under a deck of that clearance."""
    plate = PLATE.replace(clearance_mm=fact(clearance))
    return board(plate, RIGHT, LEFT, stand("low", 220, y, f"{width} 60 {height:g}", "", under=True))


@pytest.mark.parametrize(
    ("height", "clearance", "more", "dip"),
    [
        (25, 60, 0, 500),  # round its front edge, 30 away, costs 60; beneath it 25 down and 25 up
        (30, 60, 0, 600),  # as long, with fewer bends
        (31, 60, 600, 0),  # 62 beneath it: rather round
        (25, 40, 0, 500),  # 25 + 15 = 40: the room that leads need is just there
        (26, 40, 600, 0),  # 26 + 15 > 40: it must go round
    ],
)
def test_round_what_hangs_or_beneath_it(height: float, clearance: float, more: int, dip: int) -> None:
    route = under(hanging(height, clearance))
    assert (route.more, route.dip, route.beneath) == (more, dip, ("low",) if dip else ())
    assert level(route) == (2240, 800, 0, 1000, *([more] if more else []))
    assert stretches(route)[-1] == (dip or 250 + 100 + 100)


def test_without_a_clearance_nothing_passes_beneath() -> None:
    rig = hanging(25, 60)
    assert rig.deck is not None
    open_deck = rig.replace(decks={rig.deck.name: rig.deck.replace(clearance_mm=None)})
    assert (under(open_deck).more, under(open_deck).dip) == (600, 0)


def test_a_stated_lane_is_kept_beneath_what_hangs_in_it() -> None:
    rig = hanging(35, 60).replace(lead_wishes=LeadWishes(lanes=(("audio", 150.0),)))
    assert (under(rig).lane, under(rig).more, under(rig).dip) == (1500, 0, 700)


def test_leads_go_round_what_hangs_too_low() -> None:
    # 46 + 15 > 60: from y = 150 round its front edge (120, 30 away) rather than its rear edge (180, 30 away): either costs 60
    route = under(hanging(46, 60))
    assert (route.more, level(route)) == (600, (2240, 800, 0, 1000, 600))
    assert route.around in (
        ((3920, 1500), (3920, 1200), (1680, 1200), (1680, 1500)),
        ((3920, 1500), (3920, 1800), (1680, 1800), (1680, 1500)),
    )


def test_the_nearer_side_is_taken() -> None:
    # from 110 to 170: its rear edge is 20 away, its front edge 40
    assert under(hanging(46, 60, y=110)).more == 400


def test_an_end_that_is_closed_in() -> None:
    plate = PLATE.replace(clearance_mm=fact(60.0))
    below = stand("below", 100, 300, "60 60 40", "in:F30", under=True)
    low = stand("low", 110, 280, "40 19 50", "", under=True)
    route = routed(board(plate, RIGHT, below, low), lead("A1", "right.out", "below.in", "flat flat"))["A1"]
    assert (route.length, route.blocked) == (None, True)  # it leaves at (130, 292), inside what hangs there


def test_a_joint_choice_of_both_lines() -> None:
    # Ends at y = 148 and 152 with lines at 100, 150 (covered at the first end) and 210.
    plate = deck(600, 400, 10, 100, 150, 210)
    near = stand("near", 300, 98, "60 100 50", "out:L50/20")
    far = stand("far", 100, 120, "60 200 50", "in:R70/20")
    cover = stand("cover", 285, 140, "15 20 30", "", under=True)
    rig = board(plate, near, far, cover)
    route = routed(rig, lead("A1", "near.out", "far.in", "flat flat", run="under"))["A1"]
    # near takes 100 (48 away), far (190) takes 210 (20 away): 48 + 110 + 20 = 178; both at 210: 62 + 0 + 20 = 82
    assert (route.drops, joint_saving(route, deck_boxes(rig, placement(rig))["board"])) == (
        (1000, 2100),
        (2100, 2100),
    )


def test_every_path_is_as_long_as_its_route() -> None:
    for example in ("long-haul", "back-bedroom"):
        made = results(ROOT / "examples" / example / "board.rig")
        paths, routes = made.get(RoutePaths).paths, made.get(CableRoutes).routes
        assert list(paths) == [mark for mark, route in routes.items() if route.kind]
        for mark, path in paths.items():
            assert len(path.above) == len(path.points) - 1
            inner = [spot for spot in path.points if spot not in (path.points[0], path.points[-1])]
            exits = [tuple(value / 10 for value in spot) for spot in routes[mark].exits]
            first, last = path.points.index(exits[0]), len(path.points) - 1 - path.points[::-1].index(exits[1])
            flat = sum(abs(x1 - x2) + abs(y1 - y2) for (x1, y1), (x2, y2) in pairwise(path.points[first : last + 1]))
            assert inner and flat * 10 == pytest.approx(sum(level(routes[mark])))


def test_the_touring_board_has_no_lead_on_another() -> None:
    made = results(ROOT / "examples/long-haul/board.rig")
    assert not [each for each in made.get(Crossings).all if 0 in each.angles]


def test_a_run_side_by_side() -> None:
    (run,) = [each for each in results(BESIDE_CASES / "dc-beside-it.rig").get(Crossings).all if each.one.mark == "A2"]
    # A2 on y = 160 from x = 138 to 592, D1 in its lane y = 185 from 95 to 350: 212 of both, 25 apart; D1 crosses A2 never
    assert (run.parallel_mm, run.nearest_mm, run.verdict, run.hearing) == (212, 25, BESIDE, "all off")


def test_tied_leads_are_told_as_such() -> None:
    met = results(BESIDE_CASES / "tied-on-purpose.rig").get(Crossings).all
    assert TIED in {each.verdict for each in met if (each.one.mark, each.other.mark) == ("A2", "D1")}


def test_a_stated_lane_moves_the_way() -> None:
    made = changed(
        "examples/long-haul/board.rig", ("  audio cable mini-coax\n", "  audio cable mini-coax\n  lane dc 250 mm\n")
    )
    path = made.get(RoutePaths).paths["D01"]
    assert sum(y == 250 for _, y in path.points) == 2
    assert {each.verdict for each in made.get(Crossings).all} <= {FINE, BESIDE}


def test_leads_of_one_class_make_a_bundle() -> None:
    (bundle,) = results(ROOT / "examples/back-bedroom/board.rig").get(Bundles).all
    assert (bundle.signal, bundle.marks) == ("dc", ("D2b", "D5"))


SKEWED = """
unit lever {
  body 100 x 200 x 75 mm
  treadle 55..75 mm
  output out ts left 100 mm up 20 mm
}
deck board {
  size 600 x 400 mm
}
place {
  lever at 100, 50 mm turned 30 deg
}
"""


def test_a_treadle_askew() -> None:
    # Around it: 100 cos 30 + 200 sin 30 = 186.60 wide, 100 sin 30 + 200 cos 30 = 223.21 deep, so its middle is at (193.30, 161.60).
    # Its left side's middle lies 50 from there towards (-cos 30, -sin 30): (150.00, 136.60), and looks that way.
    laid = written(SKEWED).get(Placement)
    outline, jack = laid.outlines["lever"], laid.points[Port("lever", "out")]
    assert (outline.width_mm, outline.depth_mm) == pytest.approx((186.6025, 223.2051), abs=1e-3)
    assert (jack.x_mm, jack.y_mm, jack.dx, jack.dy) == pytest.approx((150.0, 136.6025, -0.8660, -0.5), abs=1e-3)
    assert min(x for x, _ in outline.corners) == pytest.approx(100) and min(
        y for _, y in outline.corners
    ) == pytest.approx(50)
