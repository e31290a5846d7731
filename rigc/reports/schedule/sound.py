"""Units in use -> what they do to the sound; instruments -> their pickups, controls and leads."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from rigc.model.fact import Quantity
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Jack, Levels
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Unit
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import lead_cell, level_cell, stated, stated_all, words
from rigc.reports.schedule.columns import Columns, table
from rigc.reports.signal.jack_words import when_bypassed

_SOURCES = (
    Column("source"),
    Column("kind"),
    Column("Zout", key="zout"),
    Column("gives", folds="give {}"),
    Column("lead"),
    Column("earth"),
    Column("battery", folds="battery {}"),
)


def sound_table(used: Iterable[Unit]) -> Table:
    """A row for every unit, amp and desk in use."""
    return table("sound", "Sound", _UNITS, used, empty="no unit is in use", landscape=True)


def instrument_table(rig: Rig) -> Table:
    """A row for every instrument; other sources have a table of their own."""
    used = (each for each in rig.instruments.values() if each.kind == "instrument")
    return table("instruments", "Instruments", _INSTRUMENTS, used, empty="no instrument", landscape=True)


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
            lead_cell(each.lead_mm, each.lead_cable),
            Cell(earth),
            _battery(each),
        )
    )


def _battery(each: Instrument) -> Cell:
    """`AA pair, 2500 mAh, 90 mA are drawn`: that of the instrument or of its body-pack."""
    kind = "" if each.battery is None else each.battery.kind
    charge = None if each.battery is None else each.battery.capacity_mah
    drawn = "" if each.draws_ma is None else f"{each.draws_ma.typed} are drawn"
    return words(kind, "" if charge is None else charge.typed, drawn)


def _once(facts: Iterable[Quantity | None]) -> list[Quantity]:
    """Of facts that were typed alike only the first."""
    return list({fact.typed: fact for fact in facts if fact is not None}.values())


def _at(unit: Unit, role: str, fact: Callable[[Jack], Quantity | None]) -> Cell:
    return stated_all(_once(fact(jack) for jack in unit.jacks if jack.role == role))


def _bypass(unit: Unit) -> Cell:
    sounds = any(jack.role in (AUDIO_IN, AUDIO_OUT) for jack in unit.jacks)
    return Cell(when_bypassed(unit) if sounds or unit.bypass is not None else "")


def _properties(unit: Unit) -> list[str]:
    said = [unit.earth or "", unit.role or "", *sorted(unit.flags)]
    if unit.clock is not None:
        said.append(f"{unit.clock} the MIDI clock")
    if unit.battery is not None:
        said.append(f"battery {unit.battery.kind}{', nothing else' if unit.battery.only else ''}")
    return [*said, *(f"{path.start} → {path.end} {path.how}" for path in unit.paths)]


_UNITS: Columns[Unit] = (
    (Column("unit"), lambda unit: Cell(unit.name, strong=True)),
    (Column("bypass"), _bypass),
    (Column("Zin", key="zin"), lambda unit: _at(unit, AUDIO_IN, lambda jack: jack.impedance_ohm)),
    (Column("Zout", key="zout"), lambda unit: _at(unit, AUDIO_OUT, lambda jack: jack.impedance_ohm)),
    (
        Column("takes at most", key="max", folds="take at most {}"),
        lambda unit: _at(unit, AUDIO_IN, lambda jack: jack.levels.maximum_dbu),
    ),
    (
        Column("gives", key="gives", folds="give {}"),
        lambda unit: _at(unit, AUDIO_OUT, lambda jack: jack.levels.nominal_dbu),
    ),
    (Column("gain", folds="gain {}"), lambda unit: stated(unit.gain_db)),
    (Column("latency", folds="latency {}"), lambda unit: stated(unit.latency_ms)),
    (Column("track", folds="track {}"), lambda unit: stated(unit.track_ohm)),
    (Column("what it is and does", key="properties"), lambda unit: words(*_properties(unit))),
)
_INSTRUMENTS: Columns[Instrument] = (
    (Column("instrument"), lambda each: Cell(each.name, strong=True)),
    (Column("inductance"), lambda each: stated(each.inductance_h)),
    (Column("resistance"), lambda each: stated(each.resistance_ohm)),
    (Column("capacitance"), lambda each: stated(each.capacitance_pf)),
    (Column("volume"), lambda each: stated_all((each.volume_ohm, each.volume_setting), " at ")),
    (Column("tone"), lambda each: stated_all((each.tone_ohm, each.tone_nf, each.tone_setting))),
    (Column("lead"), lambda each: lead_cell(each.lead_mm, each.lead_cable)),
    (Column("plain lead"), lambda each: lead_cell(each.plain_mm, each.plain_cable)),
    (Column("gives", folds="give {}"), lambda each: level_cell(next((jack.levels for jack in each.jacks), Levels()))),
    (Column("battery", folds="battery {}"), lambda each: _battery(each)),
    (Column("properties"), lambda each: words("active" if each.active else "", *sorted(each.flags))),
)
