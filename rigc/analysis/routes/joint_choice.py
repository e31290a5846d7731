"""A route under the deck whose ends each took their own nearest line -> the pair of lines by which it would be shortest."""

from __future__ import annotations

from itertools import pairwise, product

from rigc.analysis.leads.lengths.below_deck import is_free, lane_way
from rigc.analysis.leads.lengths.cable_routes import Route
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes
from rigc.analysis.leads.lengths.direct_run import clear_above


def joint_saving(route: Route, around: DeckBoxes) -> tuple[int, int] | None:
    """The two lines in tenths of a millimetre; None where nothing is to be saved, or the way is not free.

    Only for a lead that goes through the deck at both ends and neither keeps to a lane nor goes round or beneath anything; nor is the other way past what hangs there reckoned. Over the
    deck each end must reach its line without crossing a footprint.
    """
    if route.kind != "under" or None in route.drops or route.lane is not None or route.around or route.dip:
        return None
    free = [
        [line for line in around.lines if not around.covers(x, line) and clear_above((x, y), (x, line), around)]
        for x, y in route.exits
    ]

    def way(*lines: int) -> int:
        return sum(abs(here - there) for here, there in stretches(route, lines))

    def open_below(first: int, last: int) -> bool:
        here, there = (route.exits[0][0], first), (route.exits[1][0], last)
        return any(is_free(lane_way(here, there, lane), around.hanging) for lane in (first, last))

    found = [(way(*lines), *lines) for lines in product(*free) if open_below(*lines)]
    if not found:
        return None
    least, first, last = min(found)
    return (first, last) if least < way(*(line for line in route.drops if line is not None)) else None


def stretches(route: Route, lines: tuple[int, ...]) -> tuple[tuple[int, int], ...]:
    """In y: from one end to its line, below the deck to the other line, to the other end."""
    (_, y1), (_, y2) = route.exits
    return tuple(pairwise((y1, *lines, y2)))
