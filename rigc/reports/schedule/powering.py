"""Units and supplies in use -> what they need of power and what they give."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.jacks import Jack
from rigc.model.rig import Rig
from rigc.model.things import Battery, Instrument, Outlet, Pack, Supply, Unit
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import stated, stated_all, words
from rigc.reports.schedule.columns import Columns, table

_OUTLETS = (
    Column("supply"),
    Column("outlet"),
    Column("gives"),
    Column("connector", folds="{}"),
    Column("polarity", folds="{}"),
    Column("return", folds="{}"),
    Column("captive lead", key="captive", folds="captive lead {}"),
)


def needs_table(used: Iterable[Unit]) -> Table:
    """A row for every unit in use that states something of power."""
    needing = filter(_states_power, used)
    return table("needs", "Power that units need", _NEEDS, needing, empty="no unit needs power", landscape=True)


def own_mains_table(rig: Rig, used: Iterable[Unit]) -> Table | None:
    """A row for every amp, keyboard and all else with a mains lead of its own that says what it takes; None where none does."""
    things: tuple[Unit | Instrument, ...] = (*used, *rig.instruments.values())
    saying = [each for each in things if each.mains or each.takes_va or each.takes_w]
    return table("own-mains", "With mains leads of their own", _OWN_MAINS, saying) if saying else None


def supply_table(used: Iterable[Supply]) -> Table:
    """A row for every supply in use."""
    return table("supplies", "Supplies", _SUPPLIES, used, empty="no supply is in use")


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
            None if unit.ends else unit.inlet,
            unit.battery,
            unit.warm_w,
            unit.accepts_low_v,
            unit.polarity,
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


def _volts(unit: Unit) -> Cell:
    return Cell("" if unit.volts is None else f"{unit.volts.typed} {unit.current or ''}", mark=stated(unit.volts).mark)


def _inlet(inlet: Jack | None) -> Cell:
    captive = "" if inlet is None or inlet.captive_mm is None else f"captive lead {inlet.captive_mm.typed}"
    return words("" if inlet is None else str(inlet.connector), captive)


def _battery(battery: Battery | None) -> Cell:
    if battery is None:
        return Cell("")
    return words(battery.kind, stated(battery.capacity_mah).text, "nothing else" if battery.only else "")


def _pack(pack: Pack | None) -> Cell:
    if pack is None:
        return Cell("")
    cells = f"at {pack.cells_v.typed}" if pack.cells_v is not None else ""
    return words(pack.kind, stated(pack.energy_wh or pack.charge_mah).text, cells, "nothing else" if pack.only else "")


_NEEDS: Columns[Unit] = (
    (Column("unit"), lambda unit: Cell(unit.name, strong=True)),
    (Column("needs", folds="need {}"), _volts),
    (Column("accepts", folds="take {}"), lambda unit: stated_all((unit.accepts_low_v, unit.accepts_high_v), " to ")),
    (Column("polarity", folds="{}"), lambda unit: Cell("none (AC)") if unit.current == "ac" else stated(unit.polarity)),
    (Column("ground", folds="ground {}"), lambda unit: stated(unit.ground)),
    (Column("draws"), lambda unit: stated(unit.draws_ma)),
    (Column("at switch-on", key="starts", folds="{} at switch-on"), lambda unit: stated(unit.starts_ma)),
    (Column("inlet", folds="{}"), lambda unit: _inlet(unit.inlet)),
    (Column("battery", folds="battery {}"), lambda unit: _battery(unit.battery)),
    (Column("heat", folds="heat {}"), lambda unit: stated(unit.warm_w)),
)


def _plug_top(supply: Supply) -> str:
    return "" if supply.plug_top is None else f"plug-top {supply.plug_top.pins}".strip()


_OWN_MAINS: Columns[Unit | Instrument] = (
    (Column("thing"), lambda each: Cell(each.name, strong=True)),
    (Column("made for", folds="made for {}"), lambda each: Cell("; ".join(it.typed for it in each.mains) or "?")),
    (
        Column("takes"),
        lambda each: stated(each.takes_va or each.takes_w) if each.takes_va or each.takes_w else Cell("?"),
    ),
)
_SUPPLIES: Columns[Supply] = (
    (Column("supply"), lambda supply: Cell(supply.name, strong=True)),
    (Column("kind"), lambda supply: words(supply.technology or "", _plug_top(supply))),
    (Column("mains"), lambda supply: Cell("; ".join(each.typed for each in supply.mains))),
    (Column("battery", folds="battery {}"), lambda supply: _pack(supply.pack)),
    (Column("core for", key="core"), lambda supply: stated(supply.core_hz)),
    (Column("ceiling"), lambda supply: stated_all((supply.ceiling_w, supply.ceiling_ma))),
    (Column("efficiency"), lambda supply: stated(supply.efficiency)),
    (Column("power factor"), lambda supply: Cell("" if supply.power_factor is None else f"{supply.power_factor:g}")),
    (Column("heat", folds="heat {}"), lambda supply: stated(supply.warm_w)),
)
