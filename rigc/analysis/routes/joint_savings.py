"""Routes under the deck -> what each lead would save if both its drop lines were chosen together: `A4.joint-saves`."""

from __future__ import annotations

from itertools import pairwise, product

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.below_deck import is_free, lane_way
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes, deck_boxes
from rigc.analysis.leads.lengths.direct_run import clear_above
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import alike, apart, total
from rigc.traced.reason import PRACTICE
from rigc.traced.term import Term
from rigc.traced.units import TENTHS


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


class JointSaving(Record):
    """What a lead would save, in tenths of a millimetre, by its best pair of drop `lines`."""

    lines: tuple[int, int]
    saves: Figure


class JointSavings(Record):
    """By lead number, in the order of the leads; only those that would be shorter."""

    all: dict[str, JointSaving]


def joint_savings(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes) -> JointSavings:
    """Compares each lead's own lines with its best pair."""
    boxes = deck_boxes(rig, placement)
    found: dict[str, JointSaving] = {}
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is not None and route.kind:
            lines = joint_saving(route, boxes[placement.points[lead.start].deck])
            if lines is not None:
                found[lead.mark] = JointSaving(lines, _saves(route, lines))
    return JointSavings(found)


def _saves(route: Route, lines: tuple[int, int]) -> Figure:
    own = tuple(line for line in route.drops if line is not None)
    return known_figure(
        f"{route.mark}.joint-saves",
        _way(route, own) - _way(route, lines),
        TENTHS,
        *route.told,
        mentioned("the best pair of lines", " and ".join(map(millimetres, lines)), unit="mm"),
        rule="each end takes its own nearest drop line; of all pairs the one with the shortest way is told beside it",
        source=PRACTICE,
    )


def _way(route: Route, lines: tuple[int, ...]) -> Term:
    way: Term = total(apart(alike(here), alike(there)) for here, there in stretches(route, lines))
    return way


COMPUTE = joint_savings
