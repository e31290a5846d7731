"""Leads of one lane are drawn side by side, and only there. By hand: at 1:5 a pitch of 1.3 mm on paper is 6.5 mm."""

from __future__ import annotations

from jack_points import jack_point

from rigc.reports.drawings.deck.lead_tracks import side_by_side
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.shapes import Point

JACK = jack_point(0, 0, "plate", 20)


def under(mark: str, left: float, right: float, lane: float = 150) -> Way:
    """From a jack at y 100 through the deck at y 120 to a lane, along it, and the same way back."""
    points: tuple[Point, ...] = ((left, 100), (left, 120), (left, lane), (right, lane), (right, 120), (right, 100))
    return Way(mark, "audio", (JACK, JACK), points, (True, False, False, False, True))


def lanes(*ways: Way) -> list[float]:
    return [way.points[2][1] for way in side_by_side(ways, 5)]


def test_those_that_meet_are_parted() -> None:
    assert lanes(under("A1", 0, 100), under("A2", 50, 200), under("A3", 60, 300)) == [150, 156.5, 143.5]


def test_those_that_do_not_meet_share_the_lane() -> None:
    assert lanes(under("A1", 0, 100), under("A2", 110, 200)) == [150, 150]


def test_ends_and_passages_stay() -> None:
    first, second = under("A1", 0, 100), under("A2", 50, 200)
    moved = side_by_side((first, second), 5)[1]
    assert moved.points == ((50, 100), (50, 120), (50, 156.5), (200, 156.5), (200, 120), (200, 100))
    assert moved.above == second.above


def test_a_lane_at_the_passage_itself_is_left_and_come_back_to() -> None:
    points = ((50.0, 100.0), (50.0, 150.0), (200.0, 150.0), (200.0, 100.0))
    straight = Way("A2", "audio", (JACK, JACK), points, (True, False, True))
    moved = side_by_side((under("A1", 0, 100), straight), 5)[1]
    assert moved.points == ((50, 100), (50, 150), (50, 156.5), (200, 156.5), (200, 150), (200, 100))
    assert moved.above == (True, False, False, False, True)
