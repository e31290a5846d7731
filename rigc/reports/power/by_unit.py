"""UnitPowers -> the power table by unit."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.leads.leads import Leads
from rigc.analysis.power.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.unit_powers import UnitPower, UnitPowers
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell
from rigc.reports.power.cells import polarity, polarity_mark
from rigc.reports.schedule.worst_first import worst_first

_COLUMNS = (
    Column("unit"),
    ZONE,
    Column("needs", "V", number=True, folds="{}"),
    Column("draws", "mA", number=True),
    Column("at switch-on", "mA", number=True, folds="{} at switch-on"),
    Column("AC/DC", folds="{}"),
    Column("polarity", folds="{}"),
    Column("ground", folds="ground {}"),
    Column("connector", folds="{}"),
    Column("outlet"),
    Column("lead"),
    Column("lead drop", "%", number=True),
)


def by_unit(powers: UnitPowers, leads: Leads, drops: LeadDrops, zones: Zones) -> Table:
    """A row for every unit that takes power from an outlet or should."""
    rows = worst_first(_unit_row(each, leads, drops, zones) for each in powers.all)
    return zoned(Table("by_unit", "Power by unit", _COLUMNS, rows, empty="no unit needs power"))


def _unit_row(power: UnitPower, leads: Leads, drops: LeadDrops, zones: Zones) -> Row:
    unit, feed = power.unit, power.feed
    outlets = feed.outlets if feed is not None else ()
    marks = [
        lead.mark for port in outlets for lead in leads.at(port) if unit.name in (lead.start.thing, lead.end.thing)
    ]
    pole = polarity(unit.polarity.value if unit.polarity is not None else None, unit.current)
    if feed is not None and feed.reversed:
        pole += ", reversing lead"
    return Row(
        (
            Cell(unit.name),
            Cell(zones.thing(unit.name)),
            figure_cell(power.volts),
            figure_cell(power.draws),
            figure_cell(power.starts, lacking=""),
            Cell((unit.current or "?").upper()),
            Cell(pole, mark=polarity_mark(unit.polarity, unit.current)),
            Cell(
                "?" if unit.ground is None else unit.ground.value,
                mark="assumed" if unit.ground is not None and unit.ground.assumed else "",
            ),
            Cell("?" if unit.inlet is None else str(unit.inlet.connector)),
            Cell(power.outlet.text, mark="" if outlets else "UNFED"),
            Cell(", ".join(dict.fromkeys(marks))),
            _lost([drops.all.get(mark) for mark in dict.fromkeys(marks)]),
        )
    )


def _lost(drops: list[LeadDrop | None]) -> Cell:
    """What each of its leads loses."""
    cells = [Cell("?") if drop is None else figure_cell(drop.share) for drop in drops]
    return Cell(", ".join(cell.text for cell in cells), mark=next((cell.mark for cell in cells if cell.mark), ""))
