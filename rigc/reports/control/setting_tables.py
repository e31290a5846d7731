"""SwitchSettings -> the table of positions to be looked at before anything is measured."""

from __future__ import annotations

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.tests.reading_cells import BY, DATE, reading_room

_COLUMNS = (
    Column("at"),
    Column("switch"),
    Column("must stand at", key="position"),
    Column("scenario"),
    reading_room("stands at"),
    DATE,
    BY,
)


def setting_tables(settings: SwitchSettings) -> tuple[Table, ...]:
    """One table, or none where no switch has to stand anywhere."""
    rows = tuple(
        Row(
            (
                Cell(each.at, strong=True),
                Cell(each.switch),
                Cell(each.position, strong=True),
                Cell(", ".join(each.scenarios) or "all"),
                *(Cell(""),) * 3,
            )
        )
        for each in settings.all
    )
    caption = "Before test 5  Switches and settings, looked at with the power off"
    return (Table("settings", caption, _COLUMNS, rows, tick=True),) if rows else ()
