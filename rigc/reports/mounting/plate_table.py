"""Things on bridge plates -> the table of plates: what each carries, where, and over which rails."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("unit"),
    Column("plate"),
    Column("the unit lies on it from x to x", "mm", key="across"),
    Column("from y to y", "mm", key="along"),
    Column("tapes that the unit's own strips meet", key="tapes"),
)


def plate_table(rig: Rig, placement: Placement, strips: MountingStrip) -> Table | None:
    """A row for each bridged thing; None if there is none."""
    rows = tuple(_row(thing, text, placement.outline(thing), strips) for thing, text in rig.mounting.bridged)
    caption = "Bridge plates: each reaches two rails, and the unit's strips hold on the plate"
    return Table("plates", caption, _COLUMNS, rows, tick=True) if rows else None


def _row(thing: str, text: str, body: Outline | None, strips: MountingStrip) -> Row:
    plate = Cell(text) if text else Cell("", mark="size not stated")
    unit = strips.of(thing)
    met = "" if unit is None or unit.tapes_met is None else str(unit.tapes_met)
    if body is None:
        return Row((Cell(thing), plate, Cell("", mark="no place"), Cell(""), Cell(met)))
    across = f"{nearest_tenth(body.x_mm)} to {nearest_tenth(body.x_mm + body.width_mm)}"
    along = f"{nearest_tenth(body.y_mm)} to {nearest_tenth(body.y_mm + body.depth_mm)}"
    return Row((Cell(thing), plate, Cell(across), Cell(along), Cell(met)))
