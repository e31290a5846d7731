"""Leads and placement -> the way of each lead over or under the deck, in whole tenths of a millimetre."""

from __future__ import annotations

from itertools import pairwise

from rigc.analysis.cables.below_deck import Size, Way, nearest_lane, way_below
from rigc.analysis.cables.deck_boxes import DeckBoxes, deck_boxes
from rigc.analysis.cables.direct_run import runs_direct
from rigc.analysis.cables.lead_ends import LeadEnd, Obstacle, lead_ends, tenths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.placement import Placement
from rigc.facts.leads import PASSAGE_MM
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class Route(Record):
    """The way of a lead, all in tenths of a millimetre: `kind` is `direct`, `under`, or empty where there is none.

    `exits` are the points where the lead leaves its plugs, `drops` the drop lines of its ends (None for an end that
    needs none); `horizontal` and `vertical` are its stretches in order. A lead without a way says the `reason`: with
    `missing` the fact that is not stated, else what is in its way (`blocked`: nothing leads through or below the deck; `between`: it joins two decks; `apart`: it would have to);
    `about` names whose fact it is. Below the deck it runs in a stated `lane`, or goes round what hangs there: then `around` are
    its points from drop line to drop line, by `more` longer. What it passes `beneath` costs it the body's height down and up,
    `dip` in all.
    """

    mark: str
    kind: str = ""
    exits: tuple[tuple[int, int], ...] = ()
    drops: tuple[int | None, ...] = ()
    horizontal: tuple[int, ...] = ()
    vertical: tuple[int, ...] = ()
    reason: str = ""
    about: str = ""
    missing: bool = False
    blocked: bool = False
    lane: int | None = None
    more: int = 0
    around: Way = ()
    beneath: tuple[str, ...] = ()
    dip: int = 0
    between: bool = False
    apart: tuple[str, ...] = ()

    @property
    def length(self) -> int | None:
        """Horizontal and vertical stretches together; None where there is no way."""
        return sum(self.horizontal) + sum(self.vertical) if self.kind else None


class CableRoutes(Record):
    """The route of each lead that stays on the board, by its number."""

    routes: dict[str, Route]


def cable_routes(rig: Rig, placement: Placement, leads: Leads) -> CableRoutes:
    """Routes every lead but the stage leads."""
    boxes = deck_boxes(rig, placement)
    return CableRoutes({lead.mark: _route(rig, placement, lead, boxes) for lead in leads.all if not lead.stage})


def _route(rig: Rig, placement: Placement, lead: Lead, boxes: dict[str | None, DeckBoxes]) -> Route:
    ends = lead_ends(rig, placement, lead)
    if isinstance(ends, Obstacle):
        return _none(lead.mark, ends)
    below = next((end for end in ends if not end.on_top), None)
    if lead.run == "over" and below is not None:
        return _none(lead.mark, Obstacle(f"it shall run over the deck, but '{below.port}' is not on top of it"))
    around = boxes[ends[0].deck]
    if lead.run == "over" or (lead.run is None and below is None and _direct(ends, around)):
        return _over(lead.mark, *ends)
    return _under(rig, lead, ends, around)


def _none(mark: str, obstacle: Obstacle) -> Route:
    return Route(
        mark,
        reason=obstacle.reason,
        about=obstacle.about,
        missing=obstacle.missing,
        blocked=obstacle.blocked,
        between=obstacle.between,
        apart=obstacle.apart,
    )


def _direct(ends: tuple[LeadEnd, LeadEnd], around: DeckBoxes) -> bool:
    start, end = ends
    exits = ((start.x, start.y), (end.x, end.y))
    return runs_direct(around.by_thing[start.port.thing], around.by_thing[end.port.thing], exits, around)


def _over(mark: str, start: LeadEnd, end: LeadEnd) -> Route:
    return Route(
        mark,
        "direct",
        ((start.x, start.y), (end.x, end.y)),
        (None, None),
        (abs(start.x - end.x), abs(start.y - end.y)),
        (abs((start.above or 0) - (end.above or 0)),),
    )


def _under(rig: Rig, lead: Lead, ends: tuple[LeadEnd, LeadEnd], around: DeckBoxes) -> Route:
    """Each end on top goes to its own drop line; below the deck the way follows x and y."""
    start, end = ends
    deck = rig.decks[start.deck or ""]
    depth = _thickness(deck, ends)
    if isinstance(depth, Obstacle):
        return _none(lead.mark, depth)
    drops: list[int | None] = []
    for here, there in ((start, end), (end, start)):
        drop = _drop_line(deck, here, there.y, around) if here.on_top else None
        if isinstance(drop, Obstacle):
            return _none(lead.mark, drop)
        drops.append(drop)
    below = [(each.x, each.y if drop is None else drop) for each, drop in zip(ends, drops, strict=True)]
    lanes = (tenths(y) for signal, y in rig.lead_wishes.lanes if signal == lead.signal)
    lane = nearest_lane(below[0], below[1], lanes)
    way = way_below(below[0], below[1], lane, around.hanging, _size(deck))
    if way is None:
        return _none(lead.mark, _closed_in(rig, deck, around))
    if way.around:
        lane = None
    stops = [y for y in (start.y, drops[0], lane, drops[1], end.y) if y is not None]
    return Route(
        lead.mark,
        "under",
        ((start.x, start.y), (end.x, end.y)),
        tuple(drops),
        (
            abs(start.x - end.x),
            *(abs(here - there) for here, there in pairwise(stops)),
            *([way.more] if way.more else []),
        ),
        (
            *(tenths(PASSAGE_MM.value) + ((each.above or 0) + depth if each.on_top else 0) for each in ends),
            *([way.dip] if way.dip else []),
        ),
        lane=lane,
        more=way.more,
        around=way.around,
        beneath=tuple(box.thing for box in way.beneath),
        dip=way.dip,
    )


def _closed_in(rig: Rig, deck: Deck, around: DeckBoxes) -> Obstacle:
    """Why no way is left: without the room below the deck, or a body's height, nobody knows what a lead can pass beneath."""
    if deck.clearance_mm is None:
        return Obstacle(f"the clearance of deck '{deck.name}'", deck.name, missing=True)
    things = (rig.things[box.thing] for box in around.hanging)
    unknown = next((each.name for each in things if isinstance(each, Thing) and each.height_mm is None), None)
    if unknown is not None:
        return Obstacle(f"the height of '{unknown}'", unknown, missing=True)
    return Obstacle(f"what hangs below '{deck.name}' closes in one of its ends", blocked=True)


def _size(deck: Deck) -> Size:
    if deck.width_mm is None or deck.depth_mm is None:
        return None
    return tenths(deck.width_mm.value), tenths(deck.depth_mm.value)


def _thickness(deck: Deck, ends: tuple[LeadEnd, LeadEnd]) -> int | Obstacle:
    """The thickness of the deck, if an end goes through it."""
    if not any(end.on_top for end in ends):
        return 0
    if deck.thickness_mm is None:
        return Obstacle(f"the thickness of deck '{deck.name}'", deck.name, missing=True)
    return tenths(deck.thickness_mm.value)


def _drop_line(deck: Deck, end: LeadEnd, other_y: int, around: DeckBoxes) -> int | Obstacle:
    if not around.lines:
        return Obstacle(f"the drop lines of deck '{deck.name}'", deck.name, missing=True)
    line = around.drop_line(end.x, end.y, other_y)
    if line is None:
        return Obstacle(
            f"every drop line is covered at x = {end.x / 10:g} mm, where it leaves '{end.port}'", blocked=True
        )
    return line


COMPUTE = cable_routes
