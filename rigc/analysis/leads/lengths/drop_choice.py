"""A lead's two ends and the drop lines nearest to them -> the lines through which it is shortest, in tenths of a millimetre."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

from rigc.analysis.leads.lengths.below_deck import Spot
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes
from rigc.analysis.leads.lengths.direct_run import clear_above

Lines = tuple[int | None, int | None]
"""The drop line of each end; None for an end that needs none, because it is below the deck or at a panel."""


def shortest_lines(
    ends: tuple[Spot, Spot], nearest: Lines, around: DeckBoxes, below: Callable[[Spot, Spot], int | None]
) -> Lines:
    """The pair of lines with the shortest way; of equal ones the nearest, which must be free.

    A line that is not the nearest is taken only where it is free and the end reaches it over the deck without crossing a body.
    `below` is how long the way is below the deck from one point to another, None where there is none.
    """
    (x1, y1), (x2, y2) = ends

    def along(first: int | None, last: int | None) -> int:
        """From the first end to the last one in y, if nothing is in the way."""
        down, up = y1 if first is None else first, y2 if last is None else last
        return abs(y1 - down) + abs(down - up) + abs(up - y2)

    def way(first: int | None, last: int | None) -> int | None:
        down, up = y1 if first is None else first, y2 if last is None else last
        through = below((x1, down), (x2, up))
        return None if through is None else abs(y1 - down) + through + abs(up - y2)

    best, least = nearest, way(*nearest)
    across = abs(x1 - x2)
    if least == across + abs(y1 - y2):
        return nearest
    firsts, lasts = (_offered(line, around) for line in nearest)
    reached: dict[tuple[int, int | None], bool] = {}
    for long, first, last in sorted(
        ((across + along(*pair), *pair) for pair in product(firsts, lasts)), key=lambda each: each[0]
    ):
        if least is not None and long >= least:
            break
        for number, line in enumerate((first, last)):
            if (number, line) not in reached:
                reached[number, line] = line == nearest[number] or _is_reached(ends[number], line, around)
        if reached[0, first] and reached[1, last]:
            there = way(first, last)
            if there is not None and (least is None or there < least):
                best, least = (first, last), there
    return best


def _offered(nearest: int | None, around: DeckBoxes) -> list[int | None]:
    return [None] if nearest is None else [*around.lines]


def _is_reached(end: Spot, line: int | None, around: DeckBoxes) -> bool:
    """Whether a line is free where an end is, and nothing lies between over the deck."""
    x, y = end
    return line is None or (not around.covers(x, line) and clear_above((x, y), (x, line), around))
