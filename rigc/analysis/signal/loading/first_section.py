"""Loading -> what hangs on each instrument before the first active input, with every unit off: `guitar.section.cable`,
`.percent`, `.resonance`; `guitar.section.A1.capacitance` of each lead."""

from __future__ import annotations

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Pickup, Section
from rigc.analysis.signal.loading.section_figures import RESONANCE, SUMS, UNLOADED, resonance, with_plain_lead
from rigc.analysis.signal.loading.section_leads import SectionLead
from rigc.analysis.signal.unit_mode import BYPASSED, STAGE, WINDING
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.rig import Rig
from rigc.model.ways.audio_state import ALL_OFF
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import limit
from rigc.traced.means import percent
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.units import (
    HERTZ,
    LEAD_PICOFARADS,
    METRES,
    PICOFARADS,
    PICOFARADS_PER_M,
    SHARE,
    WHOLE_PICOFARADS,
)


class FirstLead(Record):
    """A lead of the section: its length in m, the capacitance of its cable in pF/m, its own in pF."""

    mark: str
    length: AnyFigure
    per_metre: AnyFigure
    capacitance: AnyFigure


class PassiveSection(Record):
    """What a passive instrument drives: its leads, capacitances in pF, the cable's limit and its share of that.

    The resonances, in Hz, are the unloaded figure 1/(2 pi sqrt(L C)), which controls and inputs pull lower. `plain` is that
    with the instrument's plain stage lead alone, `plain_lead` this lead and the pickup together: None where none is stated.
    """

    leads: tuple[FirstLead, ...]
    cable: AnyFigure
    limit: AnyFigure
    percent: AnyFigure
    pickup: AnyFigure
    together: AnyFigure
    resonance: AnyFigure
    plain_lead: AnyFigure | None
    plain: AnyFigure | None


class InstrumentSection(Record):
    """One instrument's section; `scenarios` is empty where it is the same in all.

    `until` names what ends it; `missing` the facts for want of which a figure is lacking. An active instrument drives its
    lead itself: nothing is reckoned, and `passive` is None.
    """

    instrument: str
    scenarios: tuple[str, ...]
    until: tuple[str, ...]
    passive: PassiveSection | None
    missing: tuple[str, ...]


class FirstSection(Record):
    """The sections of all instruments that are in a chain."""

    sections: tuple[InstrumentSection, ...]


def first_section(rig: Rig, loading: Loading) -> FirstSection:
    """The sections that instruments drive with every unit off, instrument by instrument; other sources have no pickup."""
    found: list[InstrumentSection] = []
    for name in (each.name for each in rig.instruments.values() if each.kind == "instrument"):
        driven = [section for section in loading.sections if section.source.thing == name]
        mine = [(section, off) for section in driven if (off := _off(loading, section))]
        for number, (section, scenarios) in enumerate(mine, 1):
            base = f"{name}.section{'' if number == 1 else f'-{number}'}"
            found.append(_section(rig, base, section, scenarios if len(mine) > 1 else ()))
    return FirstSection(tuple(found))


def _off(loading: Loading, section: Section) -> tuple[str, ...] | None:
    """The scenarios in which a section is there with every unit off; None where it is in none."""
    states = [state for state in loading.states(section) if state.kind == ALL_OFF]
    return tuple(name for state in states for name in state.when.scenarios or ("",)) if states else None


def _section(rig: Rig, base: str, section: Section, scenarios: tuple[str, ...]) -> InstrumentSection:
    name, pickup = section.source.thing, section.pickup
    where = tuple(filter(None, scenarios))
    if pickup is None:
        return InstrumentSection(name, where, (name,), None, ())
    ends = dict.fromkeys(load.port.thing for load in section.loads if load.what in (STAGE, BYPASSED, WINDING))
    own = [each for each in section.missing_own if "capacitance" in each or "inductance" in each]
    return InstrumentSection(
        name, where, tuple(ends), _passive(rig, base, section, pickup), (*section.missing_wire, *own)
    )


def _passive(rig: Rig, base: str, section: Section, pickup: Pickup) -> PassiveSection:
    cable = figure(
        f"{base}.cable",
        section.cable_pf,
        PICOFARADS,
        rule="all leads up to the first buffer, units that are off being only cable",
        source=SUMS,
        label="cable",
    )
    own, practice = rig.limit("capacitance"), CABLE_LIMIT.source
    most = figure(
        f"{base}.limit",
        limit(rig, "capacitance", CABLE_LIMIT),
        WHOLE_PICOFARADS,
        rule="the rig's own limit, else that of practice",
        source=practice if own is None else STATED,
        label="limit",
    )
    pickup_pf = figure(f"{base}.pickup", pickup.pf, PICOFARADS, rule=AS_STATED, source=STATED, label="pickup")
    together = figure(
        f"{base}.together",
        cable + pickup_pf,
        PICOFARADS,
        rule="cable and pickup in parallel",
        source=SUMS,
        label="together",
    )
    plain_lead = plain = None
    if rig.instruments[section.source.thing].plain_mm is not None:
        plain_lead = figure(
            f"{base}.plain-lead",
            with_plain_lead(pickup),
            PICOFARADS,
            rule="the plain stage lead and the pickup in parallel",
            source=SUMS,
            label="together on the plain lead",
        )
        plain = _resonance(f"{base}.plain", pickup, plain_lead)
    return PassiveSection(
        tuple(_lead(base, lead) for lead in section.leads),
        cable,
        most,
        figure(f"{base}.percent", percent(cable, most), SHARE, rule="cable / limit × 100", source=ARITHMETIC),
        pickup_pf,
        together,
        _resonance(f"{base}.resonance", pickup, together),
        plain_lead,
        plain,
    )


def _resonance(name: str, pickup: Pickup, together: AnyFigure) -> AnyFigure:
    return figure(name, resonance(pickup.henry, together), HERTZ, rule=UNLOADED, source=RESONANCE)


def _lead(base: str, lead: SectionLead) -> FirstLead:
    name = f"{base}.{lead.field}"
    return FirstLead(
        lead.mark,
        figure(
            f"{name}.length",
            lead.length / 1000,
            METRES,
            rule="as long as it is, or as it is made or bought",
            source=ARITHMETIC,
        ),
        figure(f"{name}.per-metre", lead.pf_per_m, PICOFARADS_PER_M, rule=AS_STATED, source=STATED),
        figure(f"{name}.capacitance", lead.pf, LEAD_PICOFARADS, rule=lead.pf.rule, source=lead.pf.source),
    )


COMPUTE = first_section
