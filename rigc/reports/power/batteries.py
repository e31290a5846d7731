"""BatteryLives -> the table of batteries."""

from __future__ import annotations

from rigc.analysis.power.battery_lives import BatteryLife, BatteryLives
from rigc.model.rig import Rig
from rigc.model.ways.battery_rest import has_switch
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


def battery_table(rig: Rig, lives: BatteryLives) -> Table | None:
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
                Cell(_other(rig, life)),
            )
        )
        for life in lives.all
    )
    return Table("batteries", "Batteries", _columns(lives.all[0].show), rows) if rows else None


def _other(rig: Rig, life: BatteryLife) -> str:
    if not life.only:
        return "yes"
    return f"none: {'switch off' if has_switch(rig, life.unit) else 'unplug'} after the show"
