"""Loading -> what hangs on each instrument before the first active input, with every unit off."""

from __future__ import annotations

from rigc.analysis.computations.loading import Loading
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.section_leads import SectionLead
from rigc.analysis.signal.unit_mode import BYPASSED, STAGE, WINDING
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.audio_state import ALL_OFF
from rigc.model.rig import Rig
from rigc.record import Record


class InstrumentSection(Record):
    """One instrument's section; `scenarios` is empty where it is the same in all.

    `until` names what ends it. Capacitances in pF, resonances in Hz: the unloaded figure 1/(2 pi sqrt(L C)), which pots and
    inputs pull lower. `plain_hz` is the same with the instrument's plain lead alone, `plain_pf` that lead and the pickup together. What depends on a missing fact is None,
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
    plain_pf: float | None
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

    sections: tuple[InstrumentSection, ...]


def first_section(rig: Rig, loading: Loading) -> FirstSection:
    """The sections that instruments drive with every unit off, instrument by instrument; other sources have no pickup."""
    found: list[InstrumentSection] = []
    for name in (each.name for each in rig.instruments.values() if each.kind == "instrument"):
        driven = [section for section in loading.sections if section.source.thing == name]
        mine = [(section, off) for section in driven if (off := _off(loading, section))]
        for section, scenarios in mine:
            found.append(_section(rig, section, scenarios if len(mine) > 1 else ()))
    return FirstSection(tuple(found))


def _off(loading: Loading, section: Section) -> tuple[str, ...] | None:
    """The scenarios in which a section is there with every unit off; None where it is in none."""
    states = [state for state in loading.states(section) if state.kind == ALL_OFF]
    return tuple(name for state in states for name in state.when.scenarios or ("",)) if states else None


def _section(rig: Rig, section: Section, scenarios: tuple[str, ...]) -> InstrumentSection:
    name, pickup = section.source.thing, section.pickup
    limit = rig.limit("capacitance")
    ends = [load.port.thing for load in section.loads if load.what in (STAGE, BYPASSED, WINDING)]
    own = [each for each in section.missing_own if "capacitance" in each or "inductance" in each]
    plain = rig.instruments[name].plain_mm is not None
    return InstrumentSection(
        name,
        tuple(filter(None, scenarios)),
        section.leads if pickup is not None else (),
        tuple(dict.fromkeys(ends)) if pickup is not None else (name,),
        pickup is None,
        section.cable_pf if pickup is not None else None,
        None if pickup is None else pickup.pf,
        section.unloaded_hz,
        section.plain_hz if plain else None,
        pickup.with_plain_pf if pickup is not None and plain else None,
        CABLE_LIMIT.value if limit is None else limit.amount.value,
        (*section.missing_wire, *own) if pickup is not None else (),
        section.assumed and pickup is not None,
    )


COMPUTE = first_section
