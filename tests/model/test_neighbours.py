"""The pairs of rectangles that may touch are those that comparing each with each would find."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from rigc.model.geometry.neighbours import neighbours
from rigc.model.geometry.rectangle import Rectangle

PLACES = st.integers(-300, 900)
SIZES = st.integers(0, 300)
RECTANGLES = st.builds(Rectangle, PLACES, PLACES, SIZES, SIZES)


@given(st.lists(RECTANGLES, max_size=25), st.sampled_from([0, 4]))
def test_no_pair_is_lost_and_none_is_made_up(rectangles: list[Rectangle], within: int) -> None:
    each_with_each = [
        (one, other)
        for one, other in combinations(range(len(rectangles)), 2)
        if min(rectangles[one].overlap(rectangles[other])) > -within
    ]
    assert neighbours(rectangles, within) == each_with_each


def test_a_slip_of_the_pen_costs_no_time() -> None:
    """A unit of a thousand kilometres among small ones still fills few squares."""
    row = [Rectangle(100 * place, 0, 70, 120) for place in range(50)]
    assert len(neighbours([*row, Rectangle(-1e9, 5, 2e9, 0.001)])) == 50
