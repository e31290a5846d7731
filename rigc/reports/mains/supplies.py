"""MainsLoads -> the mains sheet's table of supplies: what each is made for, and what it takes."""

from __future__ import annotations

from collections.abc import Collection

from rigc.analysis.mains.mains_loads import MainsLoad, MainsLoads
from rigc.facts.mains import INLET_A, SHOWN_V
from rigc.model.rig import Rig
from rigc.model.things import Supply
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import AnyFigure
from rigc.traced.term import Traced, known

_COLUMNS = (
    Column("supply"),
    Column("made for"),
    Column("gives", "W", number=True),
    Column("takes", "W", number=True),
    Column("takes", "VA", number=True, key="takes_va"),
    *(Column(f"at {volts} V", "mA", number=True) for volts in SHOWN_V),
    Column("heat", "W", number=True),
    Column("efficiency"),
    Column("power factor"),
    Column("selector"),
    Column("inlet"),
)


def supply_table(rig: Rig, loads: MainsLoads) -> Table:
    """A row for every supply in use, and their sum; currents at mains that a supply is made for or that a scenario has."""
    met = {name: _met(rig, rig.supplies[name]) for name in loads.all}
    rows = [_row(rig.supplies[name], load, met[name]) for name, load in loads.all.items()]
    if len(rows) > 1:
        rows.append(_sum(loads, [volts for volts in SHOWN_V if all(volts in each for each in met.values())]))
    return Table(
        "supplies",
        "What the supplies take",
        _COLUMNS,
        tuple(rows),
        empty="no supply in use takes mains",
        landscape=True,
    )


def inlet_words(kind: str) -> str:
    """An appliance inlet with its rating (`C14, 10 A`)."""
    rated = INLET_A.get(kind)
    return kind if rated is None else f"{kind}, {rated.value:g} A"


def _inlet(supply: Supply) -> str:
    """How the mains come to it."""
    if supply.plug_top is not None:
        return f"plug-top, plug {supply.plug_top.pins or '?'}"
    inlet = next((jack for jack in supply.jacks if jack.role == "inlet"), None)
    return "?" if inlet is None else inlet_words(str(inlet.connector))


def _met(rig: Rig, supply: Supply) -> Collection[int]:
    """A figure at other mains would read as if it could be plugged in there; all where nothing says what it meets."""
    there = [scenario.mains for scenario in rig.scenarios.values() if scenario.mains is not None]
    return [
        volts for volts in SHOWN_V if any(it.low_v <= volts <= it.high_v for it in (*supply.mains, *there))
    ] or SHOWN_V


def _currents(milliamps: dict[int, AnyFigure], met: Collection[int]) -> tuple[Cell, ...]:
    return tuple(figure_cell(each) if volts in met else Cell("") for volts, each in milliamps.items())


def _row(supply: Supply, load: MainsLoad, met: Collection[int]) -> Row:
    return Row(
        (
            Cell(supply.name, strong=True),
            Cell("; ".join(each.typed for each in supply.mains) or "?"),
            figure_cell(load.given_w),
            figure_cell(load.watts),
            figure_cell(load.volt_amperes),
            *_currents(load.milliamps, met),
            figure_cell(load.heat),
            _by(load.efficiency, " %", "efficiency" in load.by_kind),
            _by(load.power_factor, "", "power factor" in load.by_kind),
            Cell(f"{len(supply.mains)} positions" if len(supply.mains) > 1 else "none"),
            Cell(_inlet(supply)),
        )
    )


def _sum(loads: MainsLoads, met: Collection[int]) -> Row:
    return Row(
        (
            Cell("all"),
            Cell(""),
            figure_cell(loads.given_w),
            figure_cell(loads.watts),
            figure_cell(loads.volt_amperes),
            *_currents(loads.milliamps, met),
            figure_cell(loads.heat),
            *(Cell("") for _ in range(4)),
        ),
        total=True,
    )


def _by(value: Traced, unit: str, by_kind: bool) -> Cell:
    number = known(value)
    return Cell("?" if number is None else f"{number:g}{unit}", mark="usual" if by_kind else "")
