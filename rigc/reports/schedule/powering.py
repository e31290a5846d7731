"""Units and supplies in use -> what they need of power and what they give."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.things import Outlet, Supply, Unit
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import stated, stated_all, words

_NEEDS = (
    Column("unit"),
    Column("needs"),
    Column("accepts"),
    Column("polarity"),
    Column("ground"),
    Column("draws"),
    Column("at switch-on", key="starts"),
    Column("inlet"),
    Column("battery"),
    Column("heat"),
)
_SUPPLIES = (
    Column("supply"),
    Column("kind"),
    Column("mains"),
    Column("core for", key="core"),
    Column("ceiling"),
    Column("efficiency"),
    Column("power factor"),
    Column("heat"),
)
_OUTLETS = (
    Column("supply"),
    Column("outlet"),
    Column("gives"),
    Column("connector"),
    Column("polarity"),
    Column("return"),
    Column("captive lead", key="captive"),
)


def needs_table(used: Iterable[Unit]) -> Table:
    """A row for every unit in use that states something of power."""
    rows = tuple(_need(unit) for unit in used if _states_power(unit))
    return Table("needs", "Power that units need", _NEEDS, rows, empty="no unit needs power", landscape=True)


def supply_table(used: Iterable[Supply]) -> Table:
    """A row for every supply in use."""
    return Table("supplies", "Supplies", _SUPPLIES, tuple(map(_supply, used)), empty="no supply is in use")


def outlet_table(used: Iterable[Supply]) -> Table:
    """A row for every outlet of every supply in use; its first setting is the one at which it leaves its maker."""
    rows = tuple(_outlet(supply, outlet) for supply in used for outlet in supply.outlets)
    return Table("outlets", "Outlets; the first setting is the maker's", _OUTLETS, rows, empty="no outlet")


def _states_power(unit: Unit) -> bool:
    return any(
        each is not None
        for each in (
            unit.volts,
            unit.draws_ma,
            unit.inlet,
            unit.battery,
            unit.warm_w,
            unit.accepts_low_v,
            unit.polarity,
        )
    )


def _need(unit: Unit) -> Row:
    volts, inlet, battery = unit.volts, unit.inlet, unit.battery
    captive = "" if inlet is None or inlet.captive_mm is None else f"captive lead {inlet.captive_mm.typed}"
    return Row(
        (
            Cell(unit.name, strong=True),
            Cell("" if volts is None else f"{volts.typed} {unit.current or ''}", mark=stated(volts).mark),
            stated_all((unit.accepts_low_v, unit.accepts_high_v), " to "),
            Cell("none (AC)") if unit.current == "ac" else stated(unit.polarity),
            stated(unit.ground),
            stated(unit.draws_ma),
            stated(unit.starts_ma),
            words("" if inlet is None else str(inlet.connector), captive),
            Cell("")
            if battery is None
            else words(battery.kind, stated(battery.capacity_mah).text, "nothing else" if battery.only else ""),
            stated(unit.warm_w),
        )
    )


def _supply(supply: Supply) -> Row:
    return Row(
        (
            Cell(supply.name, strong=True),
            Cell(supply.technology or ""),
            Cell("; ".join(each.typed for each in supply.mains)),
            stated(supply.core_hz),
            stated_all((supply.ceiling_w, supply.ceiling_ma)),
            stated(supply.efficiency),
            Cell("" if supply.power_factor is None else f"{supply.power_factor:g}"),
            stated(supply.warm_w),
        )
    )


def _outlet(supply: Supply, outlet: Outlet) -> Row:
    ratings = [f"{each.volts.typed} {each.current} {each.milliamps.typed}" for each in outlet.ratings]
    guessed = any(each.volts.assumed or each.milliamps.assumed for each in outlet.ratings)
    return Row(
        (
            Cell(supply.name),
            Cell(outlet.name, strong=True),
            Cell(" or ".join(ratings), mark="assumed" if guessed else ""),
            Cell("" if outlet.connector is None else str(outlet.connector)),
            Cell(outlet.polarity or ""),
            Cell("isolated" if outlet.common is None else f"common {outlet.common}"),
            stated(outlet.captive_mm),
        )
    )
