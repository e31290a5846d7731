"""Drop lines: the nearest where places are stated, those by which a lead is shortest where one is chosen, stated ones always."""

from __future__ import annotations

from typing import Any

import pytest
from boards_by_hand import board, deck, lead, level, routed, stand

from rigc.analysis.leads.lengths.cable_routes import Route
from rigc.model.rig import Rig

PLATE = deck(600, 400, 10, 100, 150, 210)
NEAR, FAR = stand("near", 300, 98, "60 100 50", "out:L50/20"), stand("far", 100, 120, "60 200 50", "in:R70/20")
COVER = stand("cover", 285, 140, "15 20 30", "", under=True)
"""Ends at (292, 148) and (168, 190), with lines at 100, 150 (covered at the first end) and 210."""


def chosen(rig: Rig, *names: str) -> Rig:
    """The rig with the places of these things chosen."""
    places = {name: place.replace(chosen=name in names) for name, place in rig.places.items()}
    made: Rig = rig.replace(places=places)
    return made


def way(rig: Rig, **more: Any) -> Route:
    return routed(rig, lead("A1", "near.out", "far.in", "flat flat", run="under", **more))["A1"]


def test_of_stated_places_the_nearest() -> None:
    """48 to 100, 110 below to 210, 20 to the end."""
    route = way(board(PLATE, NEAR, FAR, COVER))
    assert (route.drops, level(route)[1:], route.chosen) == ((1000, 2100), (480, 1100, 200), False)


@pytest.mark.parametrize("names", [("near",), ("far",)])
def test_of_a_chosen_place_those_by_which_it_is_shortest(names: tuple[str, ...]) -> None:
    """62 + 0 + 20 = 82 by 210 alone, in place of 178."""
    route = way(chosen(board(PLATE, NEAR, FAR, COVER), *names))
    assert (route.drops, level(route)[1:], route.chosen) == ((2100, 2100), (620, 0, 200), True)


def test_where_the_nearest_are_the_shortest_none_is_chosen() -> None:
    """With one line, at 150, both ends take it: 2 + 0 + 40 = 42."""
    route = way(chosen(board(deck(600, 400, 10, 150), NEAR, FAR), "near"))
    assert (route.drops, level(route)[1:], route.chosen) == ((1500, 1500), (20, 0, 400), False)


def test_not_by_a_line_that_lies_behind_a_body() -> None:
    """A wall from y = 160 to 180 stands between the first end and the line at 210: 48 + 0 + 90 = 138 by 100 alone is left."""
    wall = stand("wall", 280, 160, "15 20 30", "")
    route = way(chosen(board(PLATE, NEAR, FAR, COVER, wall), "near"))
    assert (route.drops, level(route)[1:], route.chosen) == ((1000, 1000), (480, 0, 900), True)


@pytest.mark.parametrize(
    ("lines", "drops", "reason"),
    [
        ((210.0,), (2100, 2100), ""),
        ((100.0, 210.0), (1000, 2100), ""),
        ((150.0,), (), "it shall go through at 150 mm, which is covered at x = 292 mm, where it leaves 'near.out'"),
        ((140.0, 210.0), (), "it shall go through at 140 mm, where 'board' has no drop line"),
    ],
)
def test_stated_lines(lines: tuple[float, ...], drops: tuple[int, ...], reason: str) -> None:
    route = way(chosen(board(PLATE, NEAR, FAR, COVER), "near"), through_mm=lines)
    assert (route.drops, route.reason, route.blocked, route.chosen) == (drops, reason, bool(reason), False)
