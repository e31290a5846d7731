"""Leads and placement -> the way of each lead over or under the deck, in whole tenths of a millimetre: `A14.route`, and where
it goes through the deck: `A14.drop.a`, `A14.drop.b`."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.below_deck import (
    Below,
    Size,
    Spot,
    Way,
    lane_way,
    length_of,
    nearest_lane,
    way_below,
)
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes, deck_boxes
from rigc.analysis.leads.lengths.direct_run import runs_direct
from rigc.analysis.leads.lengths.drop_choice import Lines, shortest_lines
from rigc.analysis.leads.lengths.lead_ends import LeadEnd, Obstacle, lead_ends, tenths, whole_tenths
from rigc.diagnostics.figures import millimetres, plain
from rigc.facts.leads import PASSAGE_MM
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, Basis, Beside, Figure, figure, known_figure
from rigc.traced.given import barred, mentioned, ours, stated
from rigc.traced.means import alike, apart, found, total
from rigc.traced.reason import PRACTICE
from rigc.traced.term import Term
from rigc.traced.units import TENTHS

_SOURCE = "arithmetic on stated places; the route model is common practice, no source"
_PASSAGE = ours(PASSAGE_MM, shown=TENTHS)
_OVER = "over the deck: the differences in x, y and height of both ends"
_UNDER = (
    "under the deck: across in x, along y from drop line to drop line (through a stated lane), and what it costs to go "
    "round what hangs there, or beneath it (its height down and up); an end on top adds the passage, the height of its jack and the thickness of the deck"
)
_DROP = (
    "the nearest drop line that no outline covers at the lead's x; of two that are equally near the one nearer to the "
    "other end, then the one in front; a stated one before that, and of a lead to a chosen place those by which it is shortest"
)


class Route(Record):
    """The way of a lead, all in tenths of a millimetre: `kind` is `direct`, `under`, or empty where there is none.

    `exits` are the points where the lead leaves its plugs, `drops` the drop lines of its ends (None for an end that
    needs none). A lead without a way says the `reason`: with `missing` the fact that is not stated, else what is in its way
    (`blocked`: nothing leads through or below the deck; `between`: it joins two decks; `apart`: it would have to); `about` names
    whose fact it is. Below the deck it runs in a stated `lane`, or goes round what hangs there: then `around` are its points from
    drop line to drop line, by `more` longer. What it passes `beneath` costs it the body's height down and up, `dip` in all. `way`
    is the sum of its stretches, level ones first, lacking where there is none; `told` are where it leaves its plugs and where it
    goes through the deck. `chosen`: it takes other drop lines than the nearest, because a place at one of its ends is chosen.
    """

    mark: str
    kind: str = ""
    exits: tuple[tuple[int, int], ...] = ()
    drops: tuple[int | None, ...] = ()
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
    way: AnyFigure | None = None
    chosen: bool = False
    told: tuple[Answer | Figure, ...] = ()

    @property
    def length(self) -> int | None:
        """How long it is, in tenths of a millimetre; None where there is no way."""
        return round(self.way) if isinstance(self.way, Figure) else None


class CableRoutes(Record):
    """The route of each lead that stays on the board, by its number."""

    routes: dict[str, Route]


def through(route: Route) -> str:
    """How a lead's line states the drop lines that were chosen for it with a place; empty where it takes the nearest."""
    lines = dict.fromkeys(line for line in route.drops if line is not None)
    return f" through {', '.join(f'{line / 10:g}' for line in lines)} mm" if route.chosen else ""


def cable_routes(rig: Rig, placement: Placement, leads: Leads) -> CableRoutes:
    """Routes every lead but the stage leads."""
    boxes = deck_boxes(rig, placement)
    return CableRoutes({lead.mark: _route(rig, placement, lead, boxes) for lead in leads.all if not lead.stage})


def _route(rig: Rig, placement: Placement, lead: Lead, boxes: dict[str | None, DeckBoxes]) -> Route:
    ends = lead_ends(rig, placement, lead)
    if isinstance(ends, Obstacle):
        return _none(lead, ends)
    below = next((end for end in ends if not end.on_top), None)
    if lead.run == "over" and below is not None:
        return _none(lead, Obstacle(f"it shall run over the deck, but '{below.port}' is not on top of it"))
    around = boxes[ends[0].deck]
    if lead.run == "over" or (lead.run is None and below is None and _direct(ends, around)):
        return _over(lead, *ends)
    return _under(rig, lead, ends, around)


def _none(lead: Lead, obstacle: Obstacle) -> Route:
    joins = mentioned(obstacle.reason if obstacle.missing else lead.mark, f"{lead.start} -> {lead.end}", lead.span)
    return Route(
        lead.mark,
        reason=obstacle.reason,
        about=obstacle.about,
        missing=obstacle.missing,
        blocked=obstacle.blocked,
        between=obstacle.between,
        apart=obstacle.apart,
        way=figure(
            f"{lead.mark}.route",
            joins if obstacle.missing else barred(obstacle.reason),
            TENTHS,
            *(() if obstacle.missing else (joins,)),
            rule="a lead needs a way",
            source=_SOURCE,
        ),
    )


def _direct(ends: tuple[LeadEnd, LeadEnd], around: DeckBoxes) -> bool:
    start, end = ends
    exits = ((start.x, start.y), (end.x, end.y))
    return runs_direct(around.by_thing[start.port.thing], around.by_thing[end.port.thing], exits, around)


def _over(lead: Lead, start: LeadEnd, end: LeadEnd) -> Route:
    across = (apart(alike(start.x), alike(end.x)), apart(alike(start.y), alike(end.y)))
    assert start.height is not None
    assert end.height is not None
    up = apart(start.height, end.height)
    return Route(
        lead.mark,
        "direct",
        ((start.x, start.y), (end.x, end.y)),
        (None, None),
        way=_way(lead, (*across, up), _OVER, start.told, end.told),
        told=(start.told, end.told),
    )


def _under(rig: Rig, lead: Lead, ends: tuple[LeadEnd, LeadEnd], around: DeckBoxes) -> Route:
    """Each end on top goes to its own drop line; below the deck the way follows x and y."""
    start, end = ends
    deck = rig.decks[start.deck or ""]
    depth = _thickness(deck, ends)
    if isinstance(depth, Obstacle):
        return _none(lead, depth)
    lanes = tuple(tenths(y) for signal, y in rig.lead_wishes.lanes if signal == lead.signal)
    found_lines = _lines(rig, lead, ends, lanes, around)
    if isinstance(found_lines, Obstacle):
        return _none(lead, found_lines)
    lines, chosen = found_lines
    drops = tuple(
        None if line is None else _drop(lead, deck, ends, number, line, around) for number, line in enumerate(lines)
    )
    spots = ((start.x, start.y), (end.x, end.y))
    down = [(x, y if line is None else line) for (x, y), line in zip(spots, lines, strict=True)]
    lane, way = _way_below(down[0], down[1], lanes, deck, around)
    if way is None:
        return _none(lead, _closed_in(rig, deck, around))
    kept_to = None if lane is None else alike(lane)
    stops: list[Term] = [y for y in (alike(start.y), drops[0], kept_to, drops[1], alike(end.y)) if y is not None]
    along = (
        apart(alike(start.x), alike(end.x)),
        *(apart(here, there) for here, there in pairwise(stops)),
        *((alike(way.more),) if way.more else ()),
    )
    through = (*(_through(each, depth) for each in ends), *((alike(way.dip),) if way.dip else ()))
    beneath = tuple(box.thing for box in way.beneath)
    lined = f"lane of {lead.signal} leads"
    return Route(
        lead.mark,
        "under",
        ((start.x, start.y), (end.x, end.y)),
        tuple(None if drop is None else int(drop) for drop in drops),
        lane=lane,
        more=way.more,
        around=way.around,
        beneath=beneath,
        dip=way.dip,
        way=_way(
            lead,
            (*along, *through),
            _UNDER,
            start.told,
            end.told,
            *(() if lane is None else (mentioned(lined, millimetres(lane), lead.span, "mm"),)),
            _passed(rig, beneath),
        ),
        told=(start.told, end.told, *(drop for drop in drops if drop is not None)),
        chosen=chosen,
    )


def _way(lead: Lead, stretches: tuple[Term, ...], rule: str, *beside: Beside) -> Figure:
    run = () if lead.run is None else (mentioned("stated run", lead.run, lead.span),)
    return known_figure(
        f"{lead.mark}.route", total(stretches), TENTHS, *beside, *run, rule=rule, source=_SOURCE, label="route"
    )


def _through(end: LeadEnd, depth: Term | None) -> Term:
    """What it costs to go through the deck, from an end on top, or to leave a jack below it."""
    if not end.on_top:
        return _PASSAGE
    assert end.height is not None
    assert depth is not None
    through: Term = _PASSAGE + end.height + depth
    return through


def _passed(rig: Rig, names: tuple[str, ...]) -> Beside:
    things = {name: rig.things[name] for name in names}
    heights = {name: thing.height_mm if isinstance(thing, Thing) else None for name, thing in things.items()}
    return lambda: tuple(stated(f"height of {name}, passed beneath", height) for name, height in heights.items())


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


def _thickness(deck: Deck, ends: tuple[LeadEnd, LeadEnd]) -> Term | Obstacle | None:
    """The thickness of the deck, if an end goes through it."""
    if not any(end.on_top for end in ends):
        return None
    if deck.thickness_mm is None:
        return Obstacle(f"the thickness of deck '{deck.name}'", deck.name, missing=True)
    return whole_tenths(stated(f"thickness of {deck.name}", deck.thickness_mm, TENTHS))


def _way_below(
    here: Spot, there: Spot, lanes: tuple[int, ...], deck: Deck, around: DeckBoxes
) -> tuple[int | None, Below | None]:
    """The lane that a lead keeps to below the deck, and how it runs there; None if there is no way."""
    lane = nearest_lane(here, there, lanes)
    rows = (here[1], there[1], *(() if lane is None else (lane,)))
    near = around.hanging_between((here[0], min(rows)), (there[0], max(rows)))
    way = way_below(here, there, lane, around.hanging, _size(deck), near)
    return None if way is None or way.around else lane, way


def _lines(
    rig: Rig, lead: Lead, ends: tuple[LeadEnd, LeadEnd], lanes: tuple[int, ...], around: DeckBoxes
) -> tuple[Lines, bool] | Obstacle:
    """The drop line of each end on top: the stated one, else the nearest; where a place is chosen, those by which the lead is shortest, and
    whether these are others than the nearest."""
    deck = rig.decks[ends[0].deck or ""]
    if lead.through_mm:
        stated_lines = _stated(lead, deck, ends, around)
        return stated_lines if isinstance(stated_lines, Obstacle) else (stated_lines, False)
    nearest: list[int | None] = []
    for here, there in (ends, ends[::-1]):
        line = _nearest(deck, here, there, around) if here.on_top else None
        if isinstance(line, Obstacle):
            return line
        nearest.append(line)
    near = nearest[0], nearest[1]
    places = (rig.places.get(end.port.thing) for end in ends)
    if not any(place is not None and place.chosen for place in places):
        return near, False

    def below(here: Spot, there: Spot) -> int | None:
        lane, way = _way_below(here, there, lanes, deck, around)
        if way is None:
            return None
        along = (here, there) if lane is None else lane_way(here, there, lane)
        return length_of(along) + way.more + way.dip

    start, end = ends
    shortest = shortest_lines(((start.x, start.y), (end.x, end.y)), near, around, below)
    return shortest, shortest != near


def _stated(lead: Lead, deck: Deck, ends: tuple[LeadEnd, LeadEnd], around: DeckBoxes) -> Lines | Obstacle:
    lines: list[int | None] = []
    for end, line in zip(ends, (lead.through_mm * 2)[:2], strict=True):
        at = tenths(line)
        if end.on_top and at not in around.lines:
            return Obstacle(f"it shall go through at {line:g} mm, where '{deck.name}' has no drop line", blocked=True)
        if end.on_top and around.covers(end.x, at):
            return Obstacle(
                f"it shall go through at {line:g} mm, which is covered at x = {end.x / 10:g} mm, where it leaves '{end.port}'",
                blocked=True,
            )
        lines.append(at if end.on_top else None)
    return lines[0], lines[1]


def _nearest(deck: Deck, end: LeadEnd, other: LeadEnd, around: DeckBoxes) -> int | Obstacle:
    """The free drop line that is nearest to an end on top."""
    if not around.lines:
        return Obstacle(f"the drop lines of deck '{deck.name}'", deck.name, missing=True)
    line = around.drop_line(end.x, end.y, other.y)
    if line is None:
        return Obstacle(
            f"every drop line is covered at x = {end.x / 10:g} mm, where it leaves '{end.port}'", blocked=True
        )
    return line


@lru_cache(maxsize=32)
def _listed(lines_mm: tuple[float, ...]) -> str:
    return ", ".join(map(plain, lines_mm))


def _drop(lead: Lead, deck: Deck, ends: tuple[LeadEnd, LeadEnd], number: int, line: int, around: DeckBoxes) -> Figure:
    """The drop line that an end takes, beside the one that is nearest to it."""
    end, other = ends[number], ends[1 - number]
    offered, declared = _listed(deck.drops_mm), deck.declared

    def because() -> str:
        x, y, there = map(millimetres, (end.x, end.y, other.y))
        if lead.through_mm:
            return f"{millimetres(line)}, as stated"
        far = f"|{y} − {millimetres(line)}| = {millimetres(abs(end.y - line))}"
        nearest = around.drop_line(end.x, end.y, other.y)
        if nearest in (None, line):
            return (
                f"of {offered} the nearest to y = {y} that is free at x = {x}: {far}; the other end is at y = {there}"
            )
        return (
            f"of {offered} the one by which the lead is shortest, chosen with the place: {far}; the nearest to y = {y} is "
            f"{millimetres(nearest or 0)}; the other end is at y = {there}"
        )

    letter = "ab"[number]

    def said() -> tuple[Basis, ...]:
        if lead.through_mm:
            return (mentioned(f"{lead.mark} through", _listed(lead.through_mm), lead.span, "mm"),)
        return (mentioned(f"drop lines of {deck.name}", offered, declared, "mm"),)

    return known_figure(
        f"{lead.mark}.drop.{letter}",
        found(line, because),
        TENTHS,
        end.told,
        other.told,
        said,
        rule=_DROP,
        source=PRACTICE,
        label=f"drop line at end {letter}",
    )


COMPUTE = cable_routes
