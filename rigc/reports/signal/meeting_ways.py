"""Joined decks -> the table of the leads that go from one to the other."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (Column("deck"), Column("is joined to", key="other"), Column("by leads", key="leads"))


def join_table(rig: Rig) -> Table | None:
    """A row for each stated join; None where there is none."""
    rows = tuple(Row((Cell(one), Cell(other), Cell(", ".join(marks), strong=True))) for one, other, marks in rig.joins)
    return Table("joins", "Joined decks", _COLUMNS, rows, tick=True) if rows else None
