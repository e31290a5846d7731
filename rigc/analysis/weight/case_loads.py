"""CaseLoads: what is packed into which case -> what each case weighs with all that is in it: `rig.lift.most`, `.weighs`, `.left`,
`rig.airline` and `rig.case` likewise; of several cases `trunk.board`, `.together`, `trunk.lift.most` and so on."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.mounting.rail_tape import RailTape
from rigc.analysis.mounting.strip_order import order_of
from rigc.analysis.weight.lead_mass import masses_of
from rigc.analysis.weight.mass import Mass, MassItem, lead_items, strip_items, weighed
from rigc.facts.weight import ONE_LIFTER_KG
from rigc.model.records import Limit
from rigc.model.rig import Rig
from rigc.model.ways.case_of import packing
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import limit
from rigc.traced.reason import ARITHMETIC, STATED
from rigc.traced.term import Term
from rigc.traced.units import KILOGRAMS, KILOGRAMS_STATED

_WHOSE = {"lift": "one lifter", "airline": "one airline piece", "case": "the case"}


class MassLimit(Record):
    """The most that a case may weigh in kg: by the source's name of the limit, and whose it is in words. `stated` is None where the
    limit is that of practice."""

    name: str
    whose: str
    most_kg: Term
    stated: Limit | None


class Margin(Record):
    """How far a case is from a limit, in kg: the `most` that it may weigh, what is known of it, and what may be added before it is as
    heavy as the limit allows; below 0 it is too heavy."""

    limit: MassLimit
    most: Figure
    weighs: Figure
    left: Figure

    @property
    def passed(self) -> bool:
        """Whether it is heavier than the limit allows; exactly as heavy is not, whatever the last binary digit says."""
        return float(self.left) < -1e-9


class CaseLoad(Record):
    """What is lifted at once: a case (None: bare) with its decks and all that is on them. `name` is the rig's where all is
    lifted at once, else that of the case or of the bare deck. There is a margin to each limit."""

    name: str
    case: str | None
    decks: tuple[str, ...]
    mass: Mass
    margins: tuple[Margin, ...]


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
        load = CaseLoad(rig.head.name, case, decks, mass, _margins("rig", mass, limits))
        return CaseLoads((load,), (), limits)
    loads = []
    for number, (case, decks) in enumerate(packed.loads):
        first, name = number == 0, case or decks[0]
        own = tuple(lead for lead in leads.all if _starts_in(placement, lead, decks, first))
        items = [item for item in mass.items if _in(rig, item, decks, first)]
        items += lead_items(masses_of(rig, leads.replace(all=own), lengths, f"{name}."))
        laid = strips.replace(
            units=tuple(each for each in strips.units if _at(rig, each.thing) in decks),
            unknown=tuple(each for each in strips.unknown if _at(rig, each.thing) in decks),
        )
        tapes = tape.only(decks)
        items += strip_items(rig, laid, order_of(rig, laid, tapes, f"{name}."), f"{name}.")
        cases = tuple(item for item in mass.cases if item.name == case)
        whole = weighed(tuple(items), cases, (), (f"{name}.board", f"{name}.together"))
        loads.append(CaseLoad(name, case, decks, whole, _margins(name, whole, limits)))
    return CaseLoads(tuple(loads), (), limits)


def _limits(rig: Rig) -> Iterator[MassLimit]:
    """That of one lifter, by the source or else by practice, and each other that the source states."""
    for name, whose in _WHOSE.items():
        stated = rig.limit(name)
        if stated is not None or name == "lift":
            most = limit(rig, name, ONE_LIFTER_KG)
            assert isinstance(most, Term)
            yield MassLimit(name, whose, most, stated)


def _margins(what: str, mass: Mass, limits: tuple[MassLimit, ...]) -> tuple[Margin, ...]:
    return tuple(_margin(f"{what}.{each.name}", mass.known_kg, each) for each in limits)


def _margin(name: str, known_kg: Figure, each: MassLimit) -> Margin:
    told = "what one person lifts" if each.stated is None else "a limit of the rig"
    source = ONE_LIFTER_KG.source if each.stated is None else STATED
    most = known_figure(f"{name}.most", each.most_kg, KILOGRAMS_STATED, rule=told, source=source, label="at most")
    weighs = known_figure(
        f"{name}.weighs",
        known_kg,
        KILOGRAMS,
        rule="all that is known of the board and its case",
        source=ARITHMETIC,
        label="it weighs",
    )
    left = known_figure(f"{name}.left", most - weighs, KILOGRAMS, rule="limit − mass with the case", source=ARITHMETIC)
    return Margin(each, most, weighs, left)


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
