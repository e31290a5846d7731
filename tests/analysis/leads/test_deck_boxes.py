"""The quick answers about a deck against the plain rule, on random boxes and lines."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes


@given(
    st.lists(st.integers(0, 40), max_size=8),
    st.lists(st.tuples(st.integers(0, 40), st.integers(1, 9)), max_size=6),
    st.integers(0, 40),
    st.integers(0, 40),
)
def test_the_quick_search_of_drop_lines_equals_the_rule(
    lines: list[int], fronts: list[tuple[int, int]], y: int, other_y: int
) -> None:
    # every box spans the x of the lead, so it covers the lines strictly between its edges
    boxes = [Box(str(at), 0, front, 10, front + depth, at % 2 == 0) for at, (front, depth) in enumerate(fronts)]
    free = [line for line in lines if not any(box.front < line < box.rear for box in boxes)]
    nearest = min(free, key=lambda line: (abs(y - line), abs(other_y - line), line), default=None)
    assert DeckBoxes(boxes, lines).drop_line(5, y, other_y) == nearest


@given(st.lists(st.tuples(st.integers(0, 30), st.integers(1, 9)), max_size=8), st.integers(-2, 42))
def test_touching_footprints_leave_their_common_edge_free(across: list[tuple[int, int]], x: int) -> None:
    boxes = [Box(str(at), left, 0, left + width, 10, False) for at, (left, width) in enumerate(across)]
    assert DeckBoxes(boxes, ()).covers(x, 5) == any(box.left < x < box.right for box in boxes)
