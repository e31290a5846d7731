"""Stated intentions -> the table of what is meant to be as it is."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (Column("unit"), Column("what is meant", key="what"), Column("why"))


def intent_table(rig: Rig) -> Table | None:
    """A row for each mute, feedback and chosen order; None where there is none."""
    told = {"mute": "mutes the rig, {}", "order": "stands before {}, on purpose", "feedback": "feeds back, on purpose"}
    rows = tuple(
        Row((Cell(each.unit, strong=True), Cell(told[each.kind].format(each.word)), Cell(each.text)))
        for each in rig.intents
    )
    return Table("intents", "Meant to be so", _COLUMNS, rows) if rows else None
