"""BatteryLives -> the table of batteries."""

from __future__ import annotations

from rigc.analysis.computations.battery_lives import BatteryLives
from rigc.diagnostics.decimals import decimals
from rigc.facts.battery import SHOW_H
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("unit"),
    Column("battery"),
    Column("capacity, as stated", "mAh", number=True),
    Column("draws", "mA", number=True),
    Column("life", "h", number=True),
    Column(f"shows of {SHOW_H.value:g} h", number=True),
    Column("other supply"),
)


def battery_table(lives: BatteryLives) -> Table | None:
    """A row for each unit with a battery; None if there are none."""
    rows = tuple(
        Row(
            (
                Cell(life.unit),
                Cell(life.kind),
                Cell("?" if life.capacity_mah is None else f"{life.capacity_mah:g}"),
                Cell("?" if life.draws_ma is None else f"{life.draws_ma:g}"),
                Cell("?" if life.hours is None else decimals(life.hours), mark="assumed" if life.assumed else ""),
                Cell("?" if life.shows is None else str(life.shows)),
                Cell("none: unplug after the show" if life.only else "yes"),
            )
        )
        for life in lives.all
    )
    return Table("batteries", "Batteries", _COLUMNS, rows) if rows else None
