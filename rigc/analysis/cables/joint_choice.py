"""A route under the deck whose ends each took their own nearest line -> how much a joint choice of both lines would save."""

from __future__ import annotations

from itertools import product

from rigc.analysis.cables.deck_boxes import DeckBoxes
from rigc.analysis.cables.direct_run import clear_above
from rigc.analysis.computations.cable_routes import Route


def joint_saving(route: Route, around: DeckBoxes) -> tuple[int, int, int] | None:
    """What is saved in tenths of a millimetre, and the two lines; None where nothing is to be saved, or the way is not free.

    Only for a lead that goes through the deck at both ends and neither keeps to a lane nor goes round anything. Over the
    deck each end must reach its line without crossing a footprint.
    """
    if route.kind != "under" or None in route.drops or route.lane is not None or route.around:
        return None
    (_, y1), (_, y2) = route.exits
    free = [
        [line for line in around.lines if not around.covers(x, line) and clear_above((x, y), (x, line), around)]
        for x, y in route.exits
    ]

    def way(first: int, last: int) -> int:
        return abs(y1 - first) + abs(first - last) + abs(last - y2)

    if not all(free):
        return None
    least, first, last = min((way(*lines), *lines) for lines in product(*free))
    saved = way(*(line for line in route.drops if line is not None)) - least
    return (saved, first, last) if saved > 0 else None
