"""Lengths, heights, air and heat on a deck, each with its limit."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.deck.air_gaps import beside_each, hangs_below, vent_gap
from rigc.analysis.deck.case_height import height_in_case
from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.findings.limits.judged import Judged
from rigc.analysis.leads.lead_plugs import socket
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.facts.clearance import LID_FOAM_MM, UNDERSIDE_MM
from rigc.facts.foot import VENT_MM, WARM_W
from rigc.model.fact import Quantity, spread_of
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.model.ways.case_of import cases_for
from rigc.traced.given import stated
from rigc.traced.means import in_its_unit
from rigc.traced.term import Term, number


def lengths(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Judged]:
    """The lengths of leads that exist: between the shortest that will do and the longest that makes no coil. A jack that lies
    elsewhere by some way makes the route as much longer or shorter, at most."""
    for lead in leads.all:
        length = lengths.lengths.get(lead.mark)
        if length is None or lead.existing_mm is None:
            continue
        own = stated(f"length of {lead.mark}", lead.existing_mm)
        astray: Any = 0.0
        for label, fact in _ends(rig, lead):
            astray = astray + (stated(label, fact) - fact.value)
        what = f"the length of {lead.mark}"
        yield Judged(what, own, in_its_unit(length.shortest) + astray, False, "mm")
        yield Judged(what, own, in_its_unit(length.longest) + astray, True, "mm")


def heights(rig: Rig, placement: Placement) -> Iterator[Judged]:
    """What stands on a deck: the lids of cases; what hangs below: the clearance."""
    for body in placement.outlines.values():
        thing = rig.things[body.thing]
        if not isinstance(thing, Thing) or thing.height_mm is None or thing.treadle_mm:
            continue
        height = stated(f"height of {body.thing}", thing.height_mm)
        deck = rig.decks.get(body.deck or "")
        if body.under and deck is not None and deck.clearance_mm is not None:
            room: Any = stated(f"clearance of {deck.name}", deck.clearance_mm) - UNDERSIDE_MM.value
            yield Judged(f"how low '{body.thing}' hangs below the deck", height, room, True, "mm")
        for case in () if body.under else cases_for(rig, body.deck or ""):
            if case.lid_mm is not None:
                room = stated(f"lid of {case.name}", case.lid_mm) - LID_FOAM_MM.value
                what = f"the height of '{body.thing}' under the lid of '{case.name}'"
                yield Judged(what, height + body.raised_mm, room, True, "mm")


def case_heights(rig: Rig, placement: Placement) -> Iterator[Judged]:
    """How high each thing on a deck reaches in the roomiest case."""
    for deck in rig.decks.values():
        insides = [case.inside_mm[2] for case in cases_for(rig, deck.name) if case.inside_mm is not None]
        for body in placement.outlines.values() if insides else ():
            height = height_in_case(rig, deck, body) if body.deck == deck.name and not body.under else None
            if height is not None:
                facts = [
                    (f"clearance of {deck.name}", deck.clearance_mm),
                    (f"thickness of {deck.name}", deck.thickness_mm),
                ]
                thing = rig.things[body.thing]
                if isinstance(thing, Thing) and not thing.treadle_mm:
                    facts.append((f"height of {body.thing}", thing.height_mm))
                what = f"the height of '{deck.name}' with '{body.thing}' in the case"
                top = _moved(height.top_mm, [(label, fact) for label, fact in facts if fact is not None])
                yield Judged(what, top, max(insides) - LID_FOAM_MM.value, True, "mm")


def heat(rig: Rig, placement: Placement) -> Iterator[Judged]:
    """The heat of what stands over a supply, in W."""
    bodies = tuple(placement.outlines.values())
    over = beside_each(bodies)
    for body in bodies:
        thing = rig.things[body.thing]
        fact = thing.warm_w if isinstance(thing, Thing) and not body.under else None
        if fact is not None and any(hangs_below(rig, each, body) for each in over[body.thing]):
            what = f"what '{body.thing}' gives off over a supply"
            yield Judged(what, stated(f"heat of {body.thing}", fact), WARM_W.value, True, "W")


def vents(rig: Rig, placement: Placement) -> Iterator[Judged]:
    """The air before each side with vents, in mm. A body that is larger by some way leaves as much less, at most."""
    bodies = tuple(placement.outlines.values())
    beside = beside_each(bodies, VENT_MM.value + 2 * max((_growth(rig, body.thing) for body in bodies), default=0.0))
    for body in bodies:
        thing = rig.things[body.thing]
        for side in thing.vents if isinstance(thing, Thing) else ():
            for other in beside[body.thing]:
                if (other.deck, other.under) == (body.deck, body.under):
                    yield from _before(rig, body, side, other)


def _before(rig: Rig, body: Outline, side: str, other: Outline) -> Iterator[Judged]:
    thing = rig.things[body.thing]
    gap = vent_gap(thing, rig.places[body.thing], side, other) if isinstance(thing, Thing) else None
    if gap is not None:
        sizes = [
            (f"size of {name}", fact) for name in (body.thing, other.thing) if (fact := _size(rig, name)) is not None
        ]
        air = 0 - _moved(-gap, sizes)
        yield Judged(f"the air before the {side} vents of '{body.thing}'", air, VENT_MM.value, False, "mm")


def _growth(rig: Rig, name: str) -> float:
    """By how much a body may be larger than it is stated to be, at most, in mm."""
    size = _size(rig, name)
    spread = None if size is None else spread_of(size)
    return 0.0 if size is None or spread is None else spread.most - size.value


def _size(rig: Rig, name: str) -> Quantity | None:
    """The body of a thing, whose sizes are one statement."""
    thing = rig.things[name]
    sizes = (thing.width_mm, thing.depth_mm) if isinstance(thing, Thing) else ()
    return next((each for each in sizes if each is not None and spread_of(each) is not None), None)


def _ends(rig: Rig, lead: Lead) -> Iterator[tuple[str, Quantity]]:
    """The facts that may be off and by which the jacks of a lead lie where they do; their heights are in the route itself."""
    for port in (lead.start, lead.end):
        jack, thing = socket(rig, port), rig.things[port.thing]
        size = _size(rig, port.thing) if isinstance(thing, Thing) else None
        place = None if jack is None else jack.offset_mm
        if place is not None and spread_of(place) is not None:
            yield f"place of {port}", place
        if size is not None:
            yield f"size of {port.thing}", size


def _moved(value: float, facts: list[tuple[str, Quantity]]) -> Term:
    """A plain number that is as much more as each of these is more than it is stated."""
    moved: Any = number(value)
    for label, fact in facts:
        moved = moved + (stated(label, fact) - fact.value)
    made: Term = moved
    return made
