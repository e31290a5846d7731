"""PowerAssignment -> the power table by unit."""

from __future__ import annotations

from rigc.analysis.computations.lead_drops import LeadDrops
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.outlet_fit import needs_outlet
from rigc.analysis.power.used_units import used_units
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.power.cells import assumed, fact_cell, polarity, polarity_mark

_COLUMNS = (
    Column("unit"),
    Column("needs", "V", number=True),
    Column("draws", "mA", number=True),
    Column("at switch-on", "mA", number=True),
    Column("AC/DC"),
    Column("polarity"),
    Column("ground"),
    Column("connector"),
    Column("outlet"),
    Column("lead"),
    Column("lead drop", "%", number=True),
)


def by_unit(rig: Rig, power: PowerAssignment, leads: Leads, drops: LeadDrops) -> Table:
    """A row for every unit that takes power from an outlet or should."""
    shown = [unit for unit in used_units(rig) if needs_outlet(unit) or power.of(unit.name) is not None]
    rows = tuple(_unit_row(unit, power, leads, drops) for unit in shown)
    return Table("by_unit", "Power by unit", _COLUMNS, rows, empty="no unit needs power")


def _unit_row(unit: Unit, power: PowerAssignment, leads: Leads, drops: LeadDrops) -> Row:
    feed = power.of(unit.name)
    outlets = feed.outlets if feed is not None else ()
    marks = [
        lead.mark for port in outlets for lead in leads.at(port) if unit.name in (lead.start.thing, lead.end.thing)
    ]
    pole = polarity(unit.polarity.value if unit.polarity is not None else None, unit.current)
    if feed is not None and feed.reversed:
        pole += ", reversing lead"
    where = " and ".join(str(port) for port in outlets)
    if feed is not None and feed.how:
        where += f" ({feed.how}{'' if feed.lower is None else f', {feed.lower} the lower'})"
    return Row(
        (
            Cell(unit.name),
            fact_cell(unit.volts),
            fact_cell(unit.draws_ma),
            Cell("") if unit.starts_ma is None else fact_cell(unit.starts_ma),
            Cell((unit.current or "?").upper()),
            Cell(pole, mark=polarity_mark(unit.polarity, unit.current)),
            Cell("?" if unit.ground is None else unit.ground.value, mark="assumed" if assumed(unit.ground) else ""),
            Cell("?" if unit.inlet is None else str(unit.inlet.connector)),
            Cell(where or "none", mark="" if where else "UNFED"),
            Cell(", ".join(dict.fromkeys(marks))),
            Cell(", ".join(_percent(drops, mark) for mark in dict.fromkeys(marks))),
        )
    )


def _percent(drops: LeadDrops, mark: str) -> str:
    drop = drops.all.get(mark)
    return "?" if drop is None or drop.percent is None else decimals(drop.percent, 2)
