"""Leads and lengths -> what hangs on each instrument before the first active input, with every unit off.

A unit that is off by true bypass is only cable, and so are passive units and panel jacks; a switcher that is out leaves
its loops out too. A buffered input, a wireless receiver, an amp or a desk ends the section.
"""

from __future__ import annotations

from math import pi, sqrt

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.section_leads import ByEnds, SectionLead, by_ends, section_lead
from rigc.analysis.computations.section_walk import SectionWalk, section_walk
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.model.wishes import When
from rigc.record import Record


class Section(Record):
    """One instrument's section; `scenarios` is empty where it is the same in all.

    `until` names what ends it. Capacitances in pF, resonances in Hz: the unloaded figure 1/(2 pi sqrt(L C)), which pots and
    inputs pull lower. `plain_hz` is the same with the instrument's plain lead alone. What depends on a missing fact is None,
    and `missing` says which. An active instrument drives its lead itself: nothing is reckoned.
    """

    instrument: str
    scenarios: tuple[str, ...]
    leads: tuple[SectionLead, ...]
    until: tuple[str, ...]
    active: bool
    cable_pf: float | None
    pickup_pf: float | None
    unloaded_hz: float | None
    plain_hz: float | None
    limit_pf: float
    missing: tuple[str, ...]
    assumed: bool

    @property
    def total_pf(self) -> float | None:
        """Cable and pickup together."""
        return None if self.cable_pf is None or self.pickup_pf is None else self.cable_pf + self.pickup_pf

    @property
    def percent(self) -> float | None:
        """The cable's share of the limit, in percent."""
        return None if self.cable_pf is None else 100 * self.cable_pf / self.limit_pf


class FirstSection(Record):
    """The sections of all instruments that are in a chain."""

    sections: tuple[Section, ...]


def first_section(rig: Rig, leads: Leads, lengths: CableLengths) -> FirstSection:
    """Walks from each instrument in each scenario; equal sections are one."""
    found = by_ends(leads)
    sections: list[Section] = []
    for instrument in rig.instruments.values():
        walks: dict[SectionWalk, list[str]] = {}
        for scenario in rig.scenarios or ("",):
            walk = section_walk(rig, When((scenario,) if scenario else (), instrument.name))
            if walk.hops:
                walks.setdefault(walk, []).append(scenario)
        for walk, scenarios in walks.items():
            told = tuple(scenarios) if len(walks) > 1 else ()
            sections.append(_section(rig, instrument, walk, told, found, lengths))
    return FirstSection(tuple(sections))


def resonance_hz(henry: float, picofarad: float) -> float:
    """The ideal resonance of an inductance with a capacitance, unloaded: 1/(2 pi sqrt(L C))."""
    return 1 / (2 * pi * sqrt(henry * picofarad * 1e-12))


def _section(
    rig: Rig,
    instrument: Instrument,
    walk: SectionWalk,
    scenarios: tuple[str, ...],
    leads: ByEnds,
    lengths: CableLengths,
) -> Section:
    parts = () if instrument.active else tuple(section_lead(rig, instrument, hop, leads, lengths) for hop in walk.hops)
    missing = [*walk.missing, *(part.missing for part in parts if part.missing)]
    known = [part.pf for part in parts if part.pf is not None]
    cable = None if missing or instrument.active else sum(known)
    pickup, henry = instrument.capacitance_pf, instrument.inductance_h
    if not instrument.active:
        missing += [f"{what} of '{instrument.name}' is not said" for what, fact in _own(instrument) if fact is None]
    limit = rig.limit("capacitance")
    return Section(
        instrument.name,
        scenarios,
        parts,
        (instrument.name,) if instrument.active else walk.until,
        instrument.active,
        cable,
        None if pickup is None else pickup.value,
        _hz(henry, pickup, cable),
        _hz(henry, pickup, _plain_pf(rig, instrument)),
        CABLE_LIMIT.value if limit is None else limit.amount.value,
        tuple(missing),
        any(part.assumed for part in parts) or any(fact is not None and fact.assumed for fact in (pickup, henry)),
    )


def _own(instrument: Instrument) -> tuple[tuple[str, Quantity | None], ...]:
    return ("the capacitance", instrument.capacitance_pf), ("the inductance", instrument.inductance_h)


def _hz(henry: Quantity | None, pickup: Quantity | None, cable_pf: float | None) -> float | None:
    if henry is None or pickup is None or cable_pf is None or not henry.value * (pickup.value + cable_pf) > 0:
        return None
    return resonance_hz(henry.value, pickup.value + cable_pf)


def _plain_pf(rig: Rig, instrument: Instrument) -> float | None:
    cable = rig.stock.cables.get(instrument.plain_cable or "")
    if instrument.plain_mm is None or cable is None or cable.capacitance_pf_per_m is None:
        return None
    return instrument.plain_mm.value * cable.capacitance_pf_per_m.value / 1000


COMPUTE = first_section
