"""A route under the deck whose ends each took their own nearest line -> how much a joint choice of both lines would save."""

from __future__ import annotations

from itertools import product

from rigc.analysis.cables.below_deck import is_free, lane_way
from rigc.analysis.cables.deck_boxes import DeckBoxes
from rigc.analysis.cables.direct_run import clear_above
from rigc.analysis.computations.cable_routes import Route


def joint_saving(route: Route, around: DeckBoxes) -> tuple[int, int, int] | None:
    """What is saved in tenths of a millimetre, and the two lines; None where nothing is to be saved, or the way is not free.

    Only for a lead that goes through the deck at both ends and neither keeps to a lane nor goes round or beneath anything; nor is the other way past what hangs there reckoned. Over the
    deck each end must reach its line without crossing a footprint.
    """
    if route.kind != "under" or None in route.drops or route.lane is not None or route.around or route.dip:
        return None
    (_, y1), (_, y2) = route.exits
    free = [
        [line for line in around.lines if not around.covers(x, line) and clear_above((x, y), (x, line), around)]
        for x, y in route.exits
    ]

    def way(first: int, last: int) -> int:
        return abs(y1 - first) + abs(first - last) + abs(last - y2)

    def open_below(first: int, last: int) -> bool:
        here, there = (route.exits[0][0], first), (route.exits[1][0], last)
        return any(is_free(lane_way(here, there, lane), around.hanging) for lane in (first, last))

    found = [(way(*lines), *lines) for lines in product(*free) if open_below(*lines)]
    if not found:
        return None
    least, first, last = min(found)
    saved = way(*(line for line in route.drops if line is not None)) - least
    return (saved, first, last) if saved > 0 else None
