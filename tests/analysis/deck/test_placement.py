"""Outlines and jack points: geometry, worked by hand."""

from __future__ import annotations

import pytest
from boards_by_hand import board, deck, panel, port, stand

from rigc.analysis.deck.placement import JackPoint, placement, turned_normal

PLATE = deck(600, 400, 10, 150)


@pytest.mark.parametrize(
    ("turned", "size", "points"),
    [
        # a body 60 x 100 at (10, 20); jacks: left 30, right 40 from the front; front 15, rear 25 from the left
        (0, (60, 100), {"l": (10, 50, -1, 0), "r": (70, 60, 1, 0), "f": (25, 20, 0, -1), "b": (35, 120, 0, 1)}),
        # (x, y) -> (100 - y, x)
        (90, (100, 60), {"l": (80, 20, 0, -1), "r": (70, 80, 0, 1), "f": (110, 35, 1, 0), "b": (10, 45, -1, 0)}),
        # (x, y) -> (60 - x, 100 - y)
        (180, (60, 100), {"l": (70, 90, 1, 0), "r": (10, 80, -1, 0), "f": (55, 120, 0, 1), "b": (45, 20, 0, -1)}),
        # (x, y) -> (y, 60 - x)
        (270, (100, 60), {"l": (40, 80, 0, 1), "r": (50, 20, 0, -1), "f": (10, 65, -1, 0), "b": (110, 55, 1, 0)}),
    ],
)
def test_turning(turned: int, size: tuple[float, float], points: dict[str, tuple[float, float, int, int]]) -> None:
    unit = stand("unit", 10, 20, "60 100 50", "l:L30/5 r:R40/6 f:F15/7 b:B25/8", turned=turned)
    laid = placement(board(PLATE, unit))
    outline = laid.outlines["unit"]
    assert (outline.x_mm, outline.y_mm, outline.width_mm, outline.depth_mm) == (10, 20, *size)
    found = {each.jack: (p.x_mm, p.y_mm, p.dx, p.dy) for each, p in laid.points.items()}
    assert found == points


@pytest.mark.parametrize("turned", [0, 90, 180, 270])
@pytest.mark.parametrize("side", "LRFB")
def test_a_jack_rests_on_just_the_sizes_that_move_it(side: str, turned: int) -> None:
    """Another width or depth of the thing moves the jack where that is among its inputs, and only there."""

    def point(body: str) -> JackPoint:
        unit = stand("unit", 10, 20, body, f"jack:{side}30", turned=turned)
        return placement(board(PLATE, unit)).points[port("unit.jack")]

    first, wider, deeper = (point(body) for body in ("60 100 50", "61 100 50", "60 101 50"))
    told = {each.name for each in first.told.inputs()}
    for name, other in (("unit width", wider), ("unit depth", deeper)):
        assert (name in told) == ((first.x_mm, first.y_mm) != (other.x_mm, other.y_mm))


def test_four_quarter_turns_lead_back() -> None:
    assert turned_normal(1, 0, 360) == (1, 0)


def test_heights_sides_and_decks() -> None:
    laid = placement(
        board(PLATE, stand("below", 0, 0, "60 100 50", "in:F10", under=True), panels=(panel("p", l=(5, 6)),))
    )
    below, at_panel = laid.points[port("below.in")], laid.points[port("p.l")]
    assert (below.under, below.panel, below.height_mm, below.deck) == (True, False, None, "board")
    assert (at_panel.x_mm, at_panel.y_mm, at_panel.dx, at_panel.dy, at_panel.panel) == (5, 6, 0, 0, True)


def test_what_is_missing_is_named() -> None:
    here = stand("here", 0, 0, "60 100 50", "in:L10/5")
    flat = stand("flat", 0, 0, "60 100 50", "in:L10/5")
    bare = (flat[0].replace(depth_mm=None), flat[1])
    open_jack = stand("open", 100, 0, "60 100 50", "in:L10/5")
    unit = open_jack[0].replace(jacks=(open_jack[0].jacks[0].replace(side=None),))
    laid = placement(board(PLATE, bare, (unit, open_jack[1]), here, places={"flat": flat[1], "open": open_jack[1]}))
    assert laid.missing == {
        "flat": "the body of 'flat'",
        "open.in": "where 'open.in' is on its body",
        "here": "the place of 'here'",
    }
    assert laid.outline("here") is None
    assert laid.point(port("here.in")) is None
    assert [laid.why_not(port(name)) for name in ("flat.in", "open.in")] == [
        "the body of 'flat'",
        "where 'open.in' is on its body",
    ]
