"""BatteryLives -> the table of batteries."""

from __future__ import annotations

from rigc.analysis.power.battery_lives import BatteryLives
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell


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
                figure_cell(life.capacity),
                figure_cell(life.draws),
                figure_cell(life.life),
                figure_cell(life.lasts, strong=life.only and life.shows == 0),
                Cell("none: unplug after the show" if life.only else "yes"),
            )
        )
        for life in lives.all
    )
    return Table("batteries", "Batteries", _columns(lives.all[0].show), rows) if rows else None
