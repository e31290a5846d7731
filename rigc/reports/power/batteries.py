"""BatteryLives -> the table of batteries."""

from __future__ import annotations

from rigc.analysis.computations.battery_lives import BatteryLives
from rigc.diagnostics.decimals import decimals
from rigc.reports.content import Cell, Column, Row, Table


def _columns(show_h: float) -> tuple[Column, ...]:
    return (
        Column("unit"),
        Column("battery"),
        Column("capacity, as stated", "mAh", number=True),
        Column("draws", "mA", number=True),
        Column("life", "h", number=True),
        Column(f"shows of {show_h:.3g} h", number=True, key="shows"),
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
                Cell("?" if life.shows is None else str(life.shows), strong=life.only and life.shows == 0),
                Cell("none: unplug after the show" if life.only else "yes"),
            )
        )
        for life in lives.all
    )
    return Table("batteries", "Batteries", _columns(lives.show_h), rows) if rows else None
