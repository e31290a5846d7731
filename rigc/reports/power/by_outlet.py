"""PowerAssignment -> the power table by outlet."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell
from rigc.reports.power.cells import polarity, unstated

_COLUMNS = (
    Column("supply"),
    Column("outlet"),
    ZONE,
    Column("set to", "V", number=True, folds="{}"),
    Column("switch", folds="switch: {}"),
    Column("AC/DC", folds="{}"),
    Column("polarity", folds="{}"),
    Column("rating", "mA", number=True, folds="rated {}"),
    Column("load", "mA", number=True),
    Column("load", "%", number=True, key="load_percent", bar=True),
    Column("unit"),
    Column("lead"),
    Column("plug", folds="plug {}"),
    Column("isolation", folds="{}"),
    Column("spare", folds="{}"),
)


def by_outlet(rig: Rig, power: PowerAssignment, leads: Leads, zones: Zones) -> Table:
    """A row for every outlet of every supply in use, the empty ones too."""
    rows = tuple(_outlet_row(rig, power, load, leads, zones) for load in power.loads.values())
    return zoned(
        Table("by_outlet", "Power by outlet", _COLUMNS, rows, empty="no supply feeds anything", landscape=True)
    )


def _outlet_row(rig: Rig, power: PowerAssignment, load: OutletLoad, leads: Leads, zones: Zones) -> Row:
    outlet, port = outlet_at(rig, load.outlet), load.outlet
    ratings = outlet.ratings if outlet is not None else ()
    positions = "/".join(f"{each.volts.value:g}" for each in ratings) if len(ratings) > 1 else ""
    wired = leads.at(port)
    plugs = dict.fromkeys(_plug(lead, port) for lead in wired)
    return Row(
        (
            Cell(port.thing),
            Cell(port.jack),
            Cell(zones.jack(port)),
            Cell(f"{load.volts:g}", strong=len(ratings) > 1),
            Cell(f"{positions} V: set to {load.volts:g} V" if positions else "none"),
            Cell(load.setting.current.upper()),
            Cell(
                polarity(outlet.polarity if outlet is not None else None, load.setting.current),
                mark="NOT STATED: measure" if load.units and unstated(outlet, load.setting.current) else "",
            ),
            figure_cell(load.rating_ma),
            figure_cell(load.load),
            figure_cell(load.share),
            Cell(_users(load)),
            Cell(", ".join(lead.mark for lead in wired)),
            Cell(", ".join(plugs)),
            Cell("isolated" if outlet is None or outlet.common is None else f"common {outlet.common}"),
            Cell("" if load.units else f"reserved: {power.reserved[port]}" if port in power.reserved else "spare"),
        )
    )


def _plug(lead: Lead, port: Port) -> str:
    """The kind of plug at the outlet; a brick's own lead has none there."""
    if lead.captive == port:
        return "captive"
    return (lead.ends[1] if lead.end == port else lead.ends[0]) or "?"


def _users(load: OutletLoad) -> str:
    names = ", ".join(load.units)
    if not load.how:
        return names
    others = ", ".join(str(port) for port in load.joined if port != load.outlet)
    return f"{names} (in {load.how} with {others})"
