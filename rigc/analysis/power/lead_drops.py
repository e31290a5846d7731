"""Leads, lengths and loads -> what each DC lead loses of the voltage that feeds it: `D2a.wire-length`, `.mohm`, `.current`,
`.shared-drop`, `.drop`, `.drop-percent`, `.warm-drop`."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from typing import TypeVar

from rigc.analysis.feeds.outlet_loads import borne
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.power.conductor import Conductor, conductor, warmed
from rigc.analysis.power.y_stretches import Stretch, y_stretches
from rigc.facts.conductors import COPPER_PER_KELVIN, TABLE_CELSIUS, WARM_CELSIUS
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, Lacking, figure
from rigc.traced.given import ours, unstated
from rigc.traced.means import in_its_unit, percent, total
from rigc.traced.reason import ARITHMETIC, PRACTICE
from rigc.traced.term import Term, Traced, known
from rigc.traced.units import FINE_MILLIAMPS, FINE_SHARE, MILLIOHMS, MILLIVOLTS, TENTHS

_OHM = "physics: Ohm's law"
N = TypeVar("N", float, Traced)


class PowerLead(Record):
    """One lead from an outlet to a unit: what it carries in mA, how long it is in tenths of a millimetre, and what there and back
    (`loop`) resist at 20 °C in mΩ.

    `volts` is what its outlet gives. `wire` is None where the source does not state its conductor.
    """

    mark: str
    unit: str
    outlet: Port
    volts: Figure
    current: AnyFigure
    length: AnyFigure
    wire: Conductor | None
    loop: AnyFigure

    @property
    def ma(self) -> Term | None:
        """What it carries; None where not known, as all below."""
        return known(self.current)

    @property
    def millimetres(self) -> Traced:
        """How long it is, in mm, known or not."""
        return _millimetres(self.length)

    @property
    def length_mm(self) -> Term | None:
        """How long it is, in mm."""
        return known(self.millimetres)

    @property
    def one_way_ohm(self) -> float | None:
        """What one of its two conductors resists at 20 °C."""
        loop = known(self.loop)
        return None if loop is None else float(loop) / 2000


class LeadDrop(PowerLead):
    """What it loses: `lost` there and back at 20 °C in mV, of a leg of a Y lead the most; `share` of that in percent of what the
    outlet gives; `warm` the same as `lost` on a warm stage.

    `shared` are the stretches that a leg of a Y lead has in common with others, at most (see `y_stretches`); None where a
    fact of one of the legs is missing. `others` is the most of its drop that the other legs cause, by their currents and by
    a thinner trunk; None where it shares nothing.
    """

    shared: tuple[Stretch, ...] | None
    others: AnyFigure | None
    lost: AnyFigure
    share: AnyFigure
    warm: AnyFigure

    @property
    def drop_v(self) -> float | None:
        """The voltage lost there and back at 20 °C."""
        lost = known(self.lost)
        return None if lost is None else float(lost) / 1000

    @property
    def percent(self) -> Term | None:
        """The same in percent of what the outlet gives."""
        return known(self.share)


class LeadDrops(Record):
    """The drops of all leads from outlets to units, by lead number, in their order."""

    all: dict[str, LeadDrop]

    def behind(self, outlets: Iterable[Port]) -> list[LeadDrop]:
        """The drops of the leads from these outlets, in order."""
        found = {at: drop for port in outlets for at, drop in self._at.get(port, ())}
        return [found[at] for at in sorted(found)]

    @cached_property
    def _at(self) -> dict[Port, list[tuple[int, LeadDrop]]]:
        found: dict[Port, list[tuple[int, LeadDrop]]] = {}
        for at, drop in enumerate(self.all.values()):
            found.setdefault(drop.outlet, []).append((at, drop))
        return found


def lead_drops(rig: Rig, power: PowerAssignment, leads: Leads, lengths: CableLengths) -> LeadDrops:
    """Each lead on a tap carries its unit's current, in parallel its share of it."""
    wires = {name: conductor(cable) for name, cable in rig.stock.cables.items()}
    legs: dict[Port, list[PowerLead]] = {}
    marks = []
    for lead in leads.all:
        outlet, inlet = (lead.start, lead.end) if lead.start in power.loads else (lead.end, lead.start)
        tap = power.taps.get(inlet.thing)
        if tap is not None and outlet in tap.outlets:
            wire = wires.get(lead.cable or "")
            legs.setdefault(outlet, []).append(_lead(rig, power, lead, outlet, inlet.thing, wire, lengths))
            marks.append(lead.mark)
    drops = {leg.mark: _drop(leg, every) for every in legs.values() for leg in every}
    return LeadDrops({mark: drops[mark] for mark in marks})


def lost_mv(loop_mohm: N, milliamps: N) -> N:
    """What a current loses in a resistance, in mV. Of terms a term."""
    lost: N = loop_mohm * milliamps / 1000
    return lost


def _lead(
    rig: Rig, power: PowerAssignment, lead: Lead, outlet: Port, unit: str, wire: Conductor | None, lengths: CableLengths
) -> PowerLead:
    mark = lead.mark
    length = figure(
        f"{mark}.wire-length",
        lengths.as_supplied[mark],
        TENTHS,
        rule="the length of a lead that exists, else the next premade one where it must be bought, else the finished one",
        source=PRACTICE,
        label=f"length of {mark}",
    )
    metre = unstated(f"the conductor of {lead.cable or mark}") if wire is None else wire.ohm_per_km
    return PowerLead(
        mark,
        unit,
        outlet,
        power.loads[outlet].volts,
        figure(
            f"{mark}.current",
            borne(outlet, rig.units[unit], power.taps[unit]),
            FINE_MILLIAMPS,
            rule="the current of its unit; in parallel the outlet's share of it",
            source=ARITHMETIC,
            label=f"{mark} carries",
        ),
        length,
        wire,
        figure(
            f"{mark}.mohm",
            2 * _millimetres(length) / 1000 * metre,
            MILLIOHMS,
            rule="there and back: 2 × length × resistance of a metre at 20 °C",
            source=_OHM if wire is None else wire.source,
            label=f"{mark}, there and back",
        ),
    )


def _millimetres(length: AnyFigure) -> Traced:
    """A length that is counted in tenths, in mm."""
    return length if isinstance(length, Lacking) else in_its_unit(length)


def _drop(lead: PowerLead, legs: list[PowerLead]) -> LeadDrop:
    """What it loses, and what it shares with the other legs on its outlet."""
    mark = lead.mark
    stretches = y_stretches(legs) if len(legs) > 1 else ()
    shared = None if stretches is None else tuple(each for each in stretches if {mark} < set(each.marks))
    others = None if shared == () else _others(lead, legs, shared)
    alone = lost_mv(lead.loop, lead.current)
    lost = figure(
        f"{mark}.drop",
        alone if others is None else alone + others,
        MILLIVOLTS,
        rule="drop = current × resistance",
        source=_OHM,
    )
    return LeadDrop(
        mark,
        lead.unit,
        lead.outlet,
        lead.volts,
        lead.current,
        lead.length,
        lead.wire,
        lead.loop,
        shared,
        others,
        lost,
        figure(
            f"{mark}.drop-percent",
            percent(lost / 1000, lead.volts),
            FINE_SHARE,
            rule="drop / voltage that feeds it × 100",
            source=_OHM,
        ),
        figure(
            f"{mark}.warm-drop",
            warmed(lost, ours(WARM_CELSIUS), ours(COPPER_PER_KELVIN), ours(TABLE_CELSIUS)),
            MILLIVOLTS,
            rule="copper resists more when it is warm",
            source=COPPER_PER_KELVIN.source,
        ),
    )


def _others(lead: PowerLead, legs: list[PowerLead], shared: tuple[Stretch, ...] | None) -> AnyFigure:
    """What the other legs of a Y lead add to its drop; lacking where a fact of one of them is missing."""
    lost: Traced = total(leg.loop for leg in legs)
    if shared is not None and lead.wire is not None:
        own = lead.wire.ohm_per_km
        lost = 2 * total(each.length_mm * _more(lead, own, legs, each) for each in shared) / 1000 / 1000
    return figure(
        f"{lead.mark}.shared-drop",
        lost,
        MILLIVOLTS,
        rule="there and back, through as much as the legs can share, of the thinner wire: what the others carry, and what its own "
        "current loses more in that than in its own wire",
        source=_OHM,
        label="shared with other legs",
    )


def _more(lead: PowerLead, own: Figure, legs: list[PowerLead], shared: Stretch) -> Traced:
    """What a metre of a stretch adds to a leg whose own wire is `own`, one way, in µV."""
    others = total(leg.current for leg in legs if leg.mark in shared.marks and leg is not lead)
    more: Traced = shared.ohm_per_km * others
    if shared.ohm_per_km > own:
        more = more + (shared.ohm_per_km - own) * lead.current
    return more


COMPUTE = lead_drops
