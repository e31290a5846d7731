"""The drop line nearest to a lead's end is covered, above or below the deck, and the lead is longer for it, or no way leads
through at all.

Why it matters: the lead goes a longer way than the plan suggests, or can't be laid.
What to do: move what covers the line, or take the longer way; its length is in the cable list. A line that is no nearer for
the lead as a whole is not told, nor one on the far side of the unit's own body, which the lead would have to cross.
Source: geometry on stated places; the route model is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes, deck_boxes
from rigc.analysis.leads.lengths.lead_ends import LeadEnd, Obstacle, lead_ends
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import joined, listed
from rigc.model.deck import Deck
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record

KIND = Kind(
    "covered-drop-line",
    Level.WARNING,
    __doc__,
    "no lead is longer because the drop line nearest to one of its ends is covered; every lead has a way",
    "geometry on stated places; the route model is common practice, no source",
)
_CENTIMETRE = 10  # mm
_ASIDE = 50  # mm that a line may be farther from an end than the nearest, if it serves several


class _Moved(Record):
    """An end whose nearest line is covered: by what, and how much longer the lead is for it, in tenths of a millimetre."""

    lead: Lead
    port: Port
    x: int
    nearest: int
    taken: int
    more: int
    cover: Box


def covered_drop_line(
    rig: Rig, leads: Leads, routes: CableRoutes, placement: Placement, finder: PlaceFinder
) -> Iterator[Diagnostic]:
    """One finding for each unit and thing that covers a line of it; one for the leads of a deck that find every line covered; one
    for each lead without a way for another reason."""
    boxes = deck_boxes(rig, placement)
    shut: dict[str, list[tuple[Lead, Route, list[LeadEnd]]]] = {}
    moved: dict[tuple[str, str], list[_Moved]] = {}
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is not None and route.blocked:
            covered = _covered(rig, placement, boxes, lead)
            if covered:
                shut.setdefault(covered[0].deck or "", []).append((lead, route, covered))
            else:
                yield _no_way(lead, route)
        elif route is not None and route.kind == "under":
            for each in _ends(lead, route, boxes[placement.points[lead.start].deck], placement):
                moved.setdefault((each.port.thing, each.cover.thing), []).append(each)
    for name, leads_there in shut.items():
        yield _all_covered(rig.decks[name], boxes[name], leads_there)
    for found in moved.values():
        yield finder.moving(_told(rig, found), found[0].cover.thing)


def _ends(lead: Lead, route: Route, around: DeckBoxes, placement: Placement) -> Iterator[_Moved]:
    for at, (port, (x, y), taken) in enumerate(zip((lead.start, lead.end), route.exits, route.drops, strict=True)):
        if taken is None:
            continue
        other_y = route.exits[1 - at][1]
        reached = _reached(placement, port)
        nearest = next((line for line in around.lines_from(y, other_y) if reached(line)), taken)
        if nearest == taken:
            continue
        cover, more = around.cover(x, nearest), _more(route, at, nearest)
        if cover is not None and more > 0:
            yield _Moved(lead, port, x, nearest, taken, more, cover)


def _reached(placement: Placement, port: Port) -> Callable[[int], bool]:
    """Whether a line does not lie beyond the whole body of the jack's own thing, seen from the jack's face."""
    point, body = placement.point(port), placement.outline(port.thing)
    if point is None or body is None or point.dy == 0:
        return lambda _: True
    if point.dy > 0:
        return round(body.y_mm * 10).__lt__
    return round((body.y_mm + body.depth_mm) * 10).__gt__


def _more(route: Route, at: int, nearest: int) -> int:
    """How much shorter the lead would be if its nearest line were free."""
    (_, y1), (_, y2) = route.exits
    there = list(route.drops)
    there[at] = nearest
    ways = ([y for y in (y1, drops[0], route.lane, drops[1], y2) if y is not None] for drops in (route.drops, there))
    taken, free = (sum(abs(here - there) for here, there in pairwise(way)) for way in ways)
    return taken - free


def _told(rig: Rig, found: list[_Moved]) -> Diagnostic:
    thing, cover = found[0].port.thing, found[0].cover
    where = "hangs below" if cover.under else "covers"
    named = "its own" if cover.thing == thing else f"'{cover.thing}'"
    told = "; ".join(
        f"{each.lead.mark} at '{each.port}' goes through at {each.taken / 10:g} mm instead, {each.more / 10:g} mm longer"
        for each in found
    )
    lines = ", ".join(dict.fromkeys(f"{each.nearest / 10:g}" for each in found))
    body = f"{named} body" if cover.thing == thing else named
    return KIND.at(
        rig.places[cover.thing].span,
        f"{body} {where} the drop line at {lines} mm that is nearest to '{thing}': {told}",
        subject=(thing, cover.thing, *(each.lead.mark for each in found)),
        label="stands in the way" if not cover.under else "hangs in the way",
        also=tuple(Label(each.lead.span, each.lead.mark) for each in found),
        numbers=tuple(Number(f"{each.lead.mark} more", each.more / 10, "mm") for each in found),
        help=f"take the longer way: accept covered-drop-line on {thing}",
    )


def _covered(rig: Rig, placement: Placement, boxes: dict[str | None, DeckBoxes], lead: Lead) -> list[LeadEnd]:
    """The ends of a lead at which every drop line is covered; none where the source states the lines."""
    ends = lead_ends(rig, placement, lead)
    if isinstance(ends, Obstacle) or lead.through_mm:
        return []
    around = boxes[ends[0].deck]
    return [end for end in ends if end.on_top and all(around.covers(end.x, line) for line in around.lines)]


def _all_covered(deck: Deck, around: DeckBoxes, found: list[tuple[Lead, Route, list[LeadEnd]]]) -> Diagnostic:
    ends = [end for _, _, covered in found for end in covered]
    marks = [lead.mark for lead, _, _ in found]
    cover = {box.thing for end in ends for line in around.lines if (box := around.cover(end.x, line)) is not None}
    where = ", ".join(f"x = {end.x / 10:g} mm ('{end.port}')" for end in ends)
    one = found[0][1].reason if len(found) == 1 else f"every drop line is covered where they leave, at {where}"
    line = ", ".join(map(str, _free_lines(deck, around, ends)))
    words = (
        f"give the deck {'more drop lines' if ',' in line else 'another drop line'}: `drop {line} mm` in '{deck.name}'"
    )
    return KIND.at(
        found[0][0].span,
        f"there is no way for {joined(marks)}: {one}",
        subject=tuple(marks),
        label="this lead",
        also=tuple(Label(lead.span, lead.mark) for lead, _, _ in found[1:]),
        mends=() if not line else (Mend(words, (AddTo("deck", deck.name, f"drop {line} mm"),)),),
        help=f"move {listed(sorted(cover), 'or')}" + ("" if line else ", or give the deck another drop line"),
        asks_for=tuple(f"the length of {mark}" for mark in marks),
    )


def _free_lines(deck: Deck, around: DeckBoxes, ends: list[LeadEnd]) -> list[int]:
    """The fewest lines in whole centimetres, in mm, that go through no rail and of which one is free at each end, no more than
    `_ASIDE` farther from it than its nearest; none where an end has no free line."""
    depth = 0 if deck.depth_mm is None else int(deck.depth_mm.value)
    lines = [
        line
        for line in range(_CENTIMETRE, depth, _CENTIMETRE)
        if not any(rail.front_mm <= line <= rail.rear_mm for rail in deck.rails)
    ]
    free = [{line: abs(end.y / 10 - line) for line in lines if not around.covers(end.x, 10 * line)} for end in ends]
    if not all(free):
        return []
    near = [{line: far for line, far in each.items() if far <= min(each.values()) + _ASIDE} for each in free]
    chosen: list[int] = []
    while near:
        serves = {line: [each[line] for each in near if line in each] for each in near for line in each}
        best = min(serves, key=lambda line: (-len(serves[line]), sum(serves[line]), line))
        chosen.append(best)
        near = [each for each in near if best not in each]
    return sorted(chosen)


def _no_way(lead: Lead, route: Route) -> Diagnostic:
    return KIND.at(
        lead.span,
        f"there is no way for {lead.mark}: {route.reason}",
        subject=(lead.mark,),
        label="this lead",
        help="move what is in the way, or give the deck another drop line",
        asks_for=(f"the length of {lead.mark}",),
    )


CHECK = covered_drop_line
