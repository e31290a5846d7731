"""Leads, lengths and loads -> what each DC lead loses of the voltage that feeds it."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.load_limits import percent_of
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.conductor import Conductor, conductor, warmed
from rigc.analysis.power.power_tap import Tap
from rigc.analysis.power.y_stretches import Stretch, y_stretches
from rigc.facts.conductors import WARM_CELSIUS
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import assumed


class LeadDrop(Record):
    """One lead from an outlet to a unit: what it carries, how long it is and what there and back resist at 20 °C.

    `shared` are the stretches that a leg of a Y lead has in common with others, at most (see `y_stretches`); None where a fact of one of
    the legs is missing.

    `volts` is what its outlet gives. `ma`, `length_mm` and `wire` are None where the source lacks the fact;
    `assumed` where one of them leans on an assumed fact.
    """

    mark: str
    unit: str
    outlet: Port
    volts: float
    ma: float | None
    length_mm: float | None
    wire: Conductor | None
    assumed: bool
    shared: tuple[Stretch, ...] | None = ()

    @property
    def one_way_ohm(self) -> float | None:
        """What one of its two conductors resists at 20 °C."""
        return None if self.wire is None or self.length_mm is None else self.wire.ohm_per_m * self.length_mm / 1000

    @property
    def loop_mohm(self) -> float | None:
        """What both of its conductors, there and back, resist at 20 °C, in milliohms."""
        return None if self.one_way_ohm is None else 2000 * self.one_way_ohm

    @property
    def shared_v(self) -> float | None:
        """The most of its drop there and back at 20 °C that the other legs of its Y lead cause, by their currents and by a thinner
        trunk."""
        if self.shared is None:
            return None
        if not self.shared:
            return 0.0
        if self.wire is None or self.ma is None or any(each.ma is None for each in self.shared):
            return None
        own = self.wire.ohm_per_m * self.ma
        return 2 * sum(each.length_mm * (each.wire.ohm_per_m * (each.ma or 0.0) - own) for each in self.shared) / 1e6

    @property
    def drop_v(self) -> float | None:
        """The voltage lost there and back at 20 °C; of a leg of a Y lead the most."""
        if self.one_way_ohm is None or self.ma is None or self.shared_v is None:
            return None
        return 2 * self.one_way_ohm * self.ma / 1000 + self.shared_v

    @property
    def warm_drop_v(self) -> float | None:
        """The same on a warm stage."""
        return None if self.drop_v is None else warmed(self.drop_v, WARM_CELSIUS.value)

    @property
    def percent(self) -> float | None:
        """The drop at 20 °C in percent of what the outlet gives."""
        return None if self.drop_v is None else percent_of(self.drop_v, self.volts)


class LeadDrops(Record):
    """The drops of all leads from outlets to units, by lead number, in their order."""

    all: dict[str, LeadDrop]


def lead_drops(rig: Rig, power: PowerAssignment, leads: Leads, lengths: CableLengths) -> LeadDrops:
    """Each lead on a tap carries its unit's current, in parallel its share of it."""
    drops: dict[str, LeadDrop] = {}
    for lead in leads.all:
        outlet, inlet = (lead.start, lead.end) if lead.start in power.loads else (lead.end, lead.start)
        tap = power.taps.get(inlet.thing)
        if tap is not None and outlet in tap.outlets:
            drops[lead.mark] = _drop(rig, lead, outlet, inlet.thing, tap, lengths)
    legs: dict[Port, list[LeadDrop]] = {}
    for drop in drops.values():
        legs.setdefault(drop.outlet, []).append(drop)
    return LeadDrops({mark: _leg(drop, legs[drop.outlet]) for mark, drop in drops.items()})


def _leg(drop: LeadDrop, legs: list[LeadDrop]) -> LeadDrop:
    """With what it shares with the other legs on its outlet, and assumed where one of theirs is."""
    if len(legs) < 2:
        return drop
    stretches = y_stretches(legs)
    shared = None if stretches is None else tuple(each for each in stretches if {drop.mark} < set(each.marks))
    leg: LeadDrop = drop.replace(shared=shared, assumed=any(each.assumed for each in legs))
    return leg


def _drop(rig: Rig, lead: Lead, outlet: Port, unit: str, tap: Tap, lengths: CableLengths) -> LeadDrop:
    draws, cable = rig.units[unit].draws_ma, rig.stock.cables.get(lead.cable or "")
    facts = (draws, None if cable is None else cable.area_mm2)
    return LeadDrop(
        lead.mark,
        unit,
        outlet,
        tap.setting(outlet).volts.value,
        None if draws is None else draws.value * tap.share(outlet),
        lengths.supplied_mm(lead.mark),
        None if cable is None else conductor(cable),
        any(fact is not None and fact.assumed for fact in facts) or assumed(lengths.as_supplied[lead.mark]),
    )


COMPUTE = lead_drops
