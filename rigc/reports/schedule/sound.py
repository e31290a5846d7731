"""Units in use -> what they do to the sound; instruments -> their pickups, controls and leads."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.fact import Quantity
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Levels
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Unit
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import level_cell, stated, stated_all, words
from rigc.reports.wiring.jack_words import when_bypassed

_UNITS = (
    Column("unit"),
    Column("bypass"),
    Column("Zin", key="zin"),
    Column("Zout", key="zout"),
    Column("takes at most", key="max"),
    Column("gives", key="gives"),
    Column("gain"),
    Column("latency"),
    Column("track"),
    Column("what it is and does", key="properties"),
)
_INSTRUMENTS = (
    Column("instrument"),
    Column("inductance"),
    Column("resistance"),
    Column("capacitance"),
    Column("volume"),
    Column("tone"),
    Column("lead"),
    Column("plain lead"),
    Column("gives"),
    Column("properties"),
)
_SOURCES = (
    Column("source"),
    Column("kind"),
    Column("Zout", key="zout"),
    Column("gives"),
    Column("lead"),
    Column("earth"),
)


def sound_table(used: Iterable[Unit]) -> Table:
    """A row for every unit, amp and desk in use."""
    return Table("sound", "Sound", _UNITS, tuple(map(_unit, used)), empty="no unit is in use", landscape=True)


def instrument_table(rig: Rig) -> Table:
    """A row for every instrument; other sources have a table of their own."""
    rows = tuple(_instrument(each) for each in rig.instruments.values() if each.kind == "instrument")
    return Table("instruments", "Instruments", _INSTRUMENTS, rows, empty="no instrument", landscape=True)


def source_table(rig: Rig) -> Table | None:
    """A row for every source that is no guitar; None where the rig has none."""
    rows = tuple(_source(each) for each in rig.instruments.values() if each.kind == "source")
    return Table("sources", "Keyboards, microphones, line sources", _SOURCES, rows, landscape=True) if rows else None


def _source(each: Instrument) -> Row:
    earth = each.earth or ("not said" if each.may_be_earthed else "no mains")
    return Row(
        (
            Cell(each.name, strong=True),
            words(*sorted(each.flags)),
            stated_all(_once(jack.impedance_ohm for jack in each.jacks)),
            stated_all(_once(jack.levels.nominal_dbu for jack in each.jacks)),
            _lead(each.lead_mm, each.lead_cable),
            Cell(earth),
        )
    )


def _unit(unit: Unit) -> Row:
    ins = [jack for jack in unit.jacks if jack.role == AUDIO_IN]
    outs = [jack for jack in unit.jacks if jack.role == AUDIO_OUT]
    paths = [f"{path.start} → {path.end} {path.how}" for path in unit.paths]
    return Row(
        (
            Cell(unit.name, strong=True),
            Cell(when_bypassed(unit) if ins or outs or unit.bypass is not None else ""),
            stated_all(_once(jack.impedance_ohm for jack in ins)),
            stated_all(_once(jack.impedance_ohm for jack in outs)),
            stated_all(_once(jack.levels.maximum_dbu for jack in ins)),
            stated_all(_once(jack.levels.nominal_dbu for jack in outs)),
            stated(unit.gain_db),
            stated(unit.latency_ms),
            stated(unit.track_ohm),
            words(*_properties(unit), *paths),
        )
    )


def _once(facts: Iterable[Quantity | None]) -> list[Quantity]:
    """Of facts that were typed alike only the first."""
    return list({fact.typed: fact for fact in facts if fact is not None}.values())


def _properties(unit: Unit) -> list[str]:
    said = [unit.earth or "", unit.role or "", *sorted(unit.flags)]
    if unit.clock is not None:
        said.append(f"{unit.clock} the MIDI clock")
    if unit.battery is not None:
        said.append(f"battery {unit.battery.kind}{', nothing else' if unit.battery.only else ''}")
    return said


def _instrument(each: Instrument) -> Row:
    levels = next((jack.levels for jack in each.jacks), Levels())
    return Row(
        (
            Cell(each.name, strong=True),
            stated(each.inductance_h),
            stated(each.resistance_ohm),
            stated(each.capacitance_pf),
            stated_all((each.volume_ohm, each.volume_setting), " at "),
            stated_all((each.tone_ohm, each.tone_nf, each.tone_setting)),
            _lead(each.lead_mm, each.lead_cable),
            _lead(each.plain_mm, each.plain_cable),
            level_cell(levels),
            words("active" if each.active else "", *sorted(each.flags)),
        )
    )


def _lead(length: Quantity | None, cable: str | None) -> Cell:
    return Cell("") if length is None else Cell(f"{length.typed} of {cable}", mark="assumed" if length.assumed else "")
