"""CaseLoads: what is packed into which case -> what each case weighs with all that is in it."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.lead_mass import lead_mass
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.mass import Mass, MassItem, lead_items, strip_items
from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.computations.placement import Placement
from rigc.analysis.computations.rail_tape import RailTape
from rigc.analysis.computations.strip_order import order_of
from rigc.facts.weight import ONE_LIFTER_KG
from rigc.model.case_of import packing
from rigc.model.records import Limit
from rigc.model.rig import Rig
from rigc.record import Record

_WHOSE = {"lift": "one lifter", "airline": "one airline piece", "case": "the case"}


class MassLimit(Record):
    """The most that a case may weigh in kg: by the source's name of the limit, and whose it is in words. `stated` is None where the
    limit is that of practice."""

    name: str
    whose: str
    most_kg: float
    stated: Limit | None


class CaseLoad(Record):
    """What is lifted at once: a case (None: bare) with its decks and all that is on them. `name` is the rig's where all is
    lifted at once, else that of the case or of the bare deck."""

    name: str
    case: str | None
    decks: tuple[str, ...]
    mass: Mass

    def left_kg(self, limit: MassLimit) -> float:
        """What may be added before it is as heavy as a limit allows, by what is known of it; below 0 it is too heavy."""
        return limit.most_kg - self.mass.known_kg

    def passes(self, limit: MassLimit) -> bool:
        """Whether it is heavier than a limit allows; exactly as heavy is not, whatever the last binary digit says."""
        return self.left_kg(limit) < -1e-9


class CaseLoads(Record):
    """All loads, in the order of the cases; none where `unclear` names cases of which nobody says what they hold. Each load stands
    under all `limits`."""

    all: tuple[CaseLoad, ...]
    unclear: tuple[str, ...]
    limits: tuple[MassLimit, ...]


def case_loads(
    rig: Rig,
    mass: Mass,
    leads: Leads,
    lengths: CableLengths,
    strips: MountingStrip,
    tape: RailTape,
    placement: Placement,
) -> CaseLoads:
    """One load is the whole rig. Of several, what has no place, and a lead between two decks, travels with the deck at which the
    lead starts, or else with the first."""
    packed, limits = packing(rig), tuple(_limits(rig))
    if packed.unclear:
        return CaseLoads((), packed.unclear, limits)
    if len(packed.loads) <= 1:
        case, decks = packed.loads[0] if packed.loads else (None, ())
        return CaseLoads((CaseLoad(rig.head.name, case, decks, mass),), (), limits)
    loads = []
    for number, (case, decks) in enumerate(packed.loads):
        first = number == 0
        own = tuple(lead for lead in leads.all if _starts_in(placement, lead, decks, first))
        items = [item for item in mass.items if _in(rig, item, decks, first)]
        items += lead_items(lead_mass(rig, leads.replace(all=own), lengths))
        laid = strips.replace(
            units=tuple(each for each in strips.units if _at(rig, each.thing) in decks),
            unknown=tuple(each for each in strips.unknown if _at(rig, each.thing) in decks),
        )
        tapes = tape.only(decks)
        items += strip_items(rig, laid, order_of(rig, laid, tapes, f"{case or decks[0]}."))
        cases = tuple(item for item in mass.cases if item.name == case)
        loads.append(CaseLoad(case or decks[0], case, decks, Mass(tuple(items), cases, ())))
    return CaseLoads(tuple(loads), (), limits)


def _limits(rig: Rig) -> Iterator[MassLimit]:
    """That of one lifter, by the source or else by practice, and each other that the source states."""
    for name, whose in _WHOSE.items():
        stated = rig.limit(name)
        if stated is not None:
            yield MassLimit(name, whose, stated.amount.value, stated)
        elif name == "lift":
            yield MassLimit(name, whose, ONE_LIFTER_KG.value, None)


def _at(rig: Rig, thing: str) -> str:
    first = "" if rig.deck is None else rig.deck.name
    place = rig.places.get(thing)
    return first if place is None else place.deck or first


def _in(rig: Rig, item: MassItem, decks: tuple[str, ...], first: bool) -> bool:
    """Whether a thing, a deck or a panel is in a load; leads and strips are reckoned anew for each."""
    if item.name in rig.decks:
        return item.name in decks
    panel = rig.panels.get(item.name)
    if panel is not None:
        return (panel.deck or _at(rig, "")) in decks
    if item.name not in rig.things:
        return False
    return _at(rig, item.name) in decks if item.name in rig.places else first


def _starts_in(placement: Placement, lead: Lead, decks: tuple[str, ...], first: bool) -> bool:
    points = (placement.point(lead.start), placement.point(lead.end))
    deck = next((point.deck for point in points if point is not None), None)
    return first if deck is None else deck in decks


COMPUTE = case_loads
