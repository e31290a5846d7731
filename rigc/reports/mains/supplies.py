"""MainsLoads -> the mains sheet's table of supplies: what each is made for, and what it takes."""

from __future__ import annotations

from rigc.analysis.computations.mains_loads import MainsLoad, MainsLoads
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import number
from rigc.facts.mains import INLET_A, SHOWN_V
from rigc.model.rig import Rig
from rigc.model.things import Supply
from rigc.reports.content import Cell, Column, Row, Table

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
    Column("fuse"),
    Column("inlet"),
)


def supply_table(rig: Rig, loads: MainsLoads) -> Table:
    """A row for every supply in use, and their sum."""
    rows = [_row(rig.supplies[name], load) for name, load in loads.all.items()]
    if len(rows) > 1:
        rows.append(_sum(loads))
    return Table("supplies", "What the supplies take", _COLUMNS, tuple(rows), empty="no supply is used", landscape=True)


def inlet_words(kind: str) -> str:
    """An appliance inlet with its rating (`C14, 10 A`)."""
    rated = INLET_A.get(kind)
    return kind if rated is None else f"{kind}, {rated.value:g} A"


def _row(supply: Supply, load: MainsLoad) -> Row:
    mark = "incomplete" if load.incomplete else "assumed" if load.assumed else ""
    inlet = next((jack for jack in supply.jacks if jack.role == "inlet"), None)
    return Row(
        (
            Cell(supply.name, strong=True),
            Cell("; ".join(each.typed for each in supply.mains) or "?"),
            Cell(decimals(load.given_w, 3), mark=mark),
            Cell(number(load.watts, 2), mark=mark),
            Cell(number(load.volt_amperes, 2), mark=mark),
            *(Cell(number(load.milliamps(fact.value), 1)) for fact in SHOWN_V.values()),
            Cell(number(load.heat_w, 2)),
            _by(load.efficiency_pct, " %", "efficiency" in load.by_kind),
            _by(load.power_factor, "", "power factor" in load.by_kind),
            Cell(f"{len(supply.mains)} positions" if len(supply.mains) > 1 else "none"),
            Cell("as marked on the supply"),
            Cell("?" if inlet is None else inlet_words(str(inlet.connector))),
        )
    )


def _sum(loads: MainsLoads) -> Row:
    return Row(
        (
            Cell("all"),
            Cell(""),
            Cell(decimals(loads.given_w, 3)),
            Cell(number(loads.watts, 3)),
            Cell(number(loads.volt_amperes, 2)),
            *(Cell(number(loads.milliamps(fact.value), 1)) for fact in SHOWN_V.values()),
            Cell(number(loads.heat_w, 2)),
            *(Cell("") for _ in range(5)),
        ),
        total=True,
    )


def _by(value: float | None, unit: str, by_kind: bool) -> Cell:
    return Cell("?" if value is None else f"{value:g}{unit}", mark="usual" if by_kind else "")
