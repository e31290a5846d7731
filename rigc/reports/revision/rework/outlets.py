"""Rework -> the outlets that change, the supplies in all, and the strips."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.power.supply_totals import SupplyTotal
from rigc.analysis.revision.plan.plan_records import OutletPlan, OutletState, StripPlan, SupplyPlan
from rigc.analysis.revision.rework import Rework
from rigc.diagnostics.figures import share, short, watts
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE
from rigc.reports.revision.rework.words import CHANGE, change_cell, first_cell, from_to, tidy

_OUTLETS = (
    Column("outlet"),
    ZONE,
    Column("fed", key="fed_before"),
    Column("feeds"),
    Column("set", "V", number=True, key="volts"),
    Column("load", "mA", number=True, key="load_ma"),
    Column("of limit", "%", number=True, key="percent"),
    Column("lead", key="leads"),
    CHANGE,
)
_STRIPS = (Column("under", key="unit"), ZONE, Column("remove"), Column("cut, place", key="place"), CHANGE)


def outlets_table(rework: Rework, loads: JointLoads, zones: Zones) -> Table:
    """A row for each outlet that feeds others or otherwise, then the supplies in all."""
    rows = [_outlet(plan, rework, loads, zones) for plan in rework.outlets]
    rows += [_supply(plan) for plan in rework.supplies]
    return tidy(Table("outlets", "Outlets", _OUTLETS, tuple(rows), empty="no outlet changes", tick=True), 2)


def strips_table(rework: Rework, order_m: str, old: Zones, new: Zones) -> Table:
    """A row for each unit whose strip is peeled off or laid; `order_m` is what that takes of strip, in words."""
    rows = tuple(_strip(plan, old, new) for plan in rework.strips)
    caption = f"Strips{f': {order_m}' if order_m else ''}"
    return tidy(Table("strips", caption, _STRIPS, rows, empty="no strip changes", tick=True))


def _outlet(plan: OutletPlan, rework: Rework, loads: JointLoads, zones: Zones) -> Row:
    now = plan.after.volts if plan.after.units else None
    volts = "" if now is None else f"{now:g}"
    cells = (
        first_cell(str(plan.outlet), plan),
        Cell(zones.jack(plan.outlet)),
        Cell(_units(plan.before) or "–"),
        Cell(_units(plan.after) + _joined(plan, rework, loads) or "–"),
        Cell(from_to(f"{plan.before.volts:g}" if plan.set_otherwise and plan.before.volts else "", volts)),
        Cell(f"{_load(plan.before)} → {_load(plan.after)}"),
        Cell(f"{_share(plan.before)} → {_share(plan.after)}"),
        Cell(", ".join(plan.after.leads)),
        change_cell(plan),
    )
    return Row(cells)


def _units(state: OutletState) -> str:
    return ", ".join(state.units)


def _joined(plan: OutletPlan, rework: Rework, loads: JointLoads) -> str:
    """Of outlets that work as one: by which adaptor, and their load and limit together."""
    load = loads.of(plan.outlet)
    if load is None or len(load.outlets) < 2:
        return ""
    mark = next((each.mark for each in rework.adaptors if each.after and plan.outlet in each.after.outlets), load.how)
    return f" by {mark}, {'?' if load.unknown else short(load.known_ma)}/{load.limit_ma:g} mA"


def _load(state: OutletState) -> str:
    return "?" if state.load_ma is None else short(state.load_ma)


def _share(state: OutletState) -> str:
    return share(state.percent)


def _supply(plan: SupplyPlan) -> Row:
    cells = (
        Cell(f"{plan.supply} in all"),
        Cell(""),
        Cell(_drawn(plan.before)),
        Cell(_drawn(plan.after)),
        Cell(""),
        Cell(f"{_milliamps(plan.before)} → {_milliamps(plan.after)}"),
        Cell(f"{_taken(plan.before)} → {_taken(plan.after)}"),
        Cell(""),
        Cell(""),
    )
    return Row(cells, total=True)


def _drawn(total: SupplyTotal | None) -> str:
    return "–" if total is None else f"{watts(total.drawn_w)} W{' and more' if total.unknown else ''}"


def _milliamps(total: SupplyTotal | None) -> str:
    return "–" if total is None else f"{short(total.drawn_ma)}{'+' if total.unknown else ''}"


def _taken(total: SupplyTotal | None) -> str:
    if total is None:
        return "–"
    return share(None if total.unknown else total.known_pct)


def _strip(plan: StripPlan, old: Zones, new: Zones) -> Row:
    before, after = plan.before, plan.after
    removed = [] if before is None else _pieces(plan, before.pieces, before.deck_pieces if plan.peel else ())
    placed = [] if after is None else _pieces(plan, after.pieces, after.deck_pieces)
    zone = (old if after is None else new).thing(plan.unit)
    return Row(
        (
            first_cell(plan.unit, plan),
            Cell(zone),
            Cell("; ".join(removed)),
            Cell("; ".join(placed)),
            change_cell(plan),
        )
    )


def _pieces(plan: StripPlan, base: tuple[float, ...], deck: tuple[float, ...]) -> list[str]:
    if plan.on_unit and plan.on_deck and base == deck:
        return [f"base, deck {counted(base)}"]
    found = [f"base {counted(base)}"] if plan.on_unit and base else []
    return found + ([f"deck {counted(deck)}"] if plan.on_deck and deck else [])


def counted(pieces: tuple[float, ...]) -> str:
    """Pieces of strip: `2 × 105`."""
    return ", ".join(f"{pieces.count(length)} × {short(length)}" for length in dict.fromkeys(pieces))
