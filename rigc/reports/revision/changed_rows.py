"""Rework -> the rows of a sheet's tables that show what this revision changed, each with the numbers of the changes."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.revision.plan.plan_records import Piece
from rigc.analysis.revision.rework import Rework
from rigc.record import Record
from rigc.reports.content import Row, Table

NONE_SAID = "–"
"""What stands for the number where no `change` of the rig block names what differs."""


class Changed(Record):
    """The numbers by the leads and adaptors, units that came, outlets and fed units that this revision changed; empty of the first one."""

    leads: dict[str, str]
    units: dict[str, str]
    outlets: dict[str, str]
    feeds: dict[str, str]


def changed(rework: Rework) -> Changed:
    """Of what a hand has to do with; what is gone has no row."""
    leads = [(plan.mark, plan) for plan in rework.leads if plan.touched and plan.after is not None]
    adaptors = [(plan.mark, plan) for plan in rework.adaptors if plan.after is not None]
    return Changed(
        _numbers((*leads, *adaptors)),
        _numbers((plan.name, plan) for plan in rework.units if plan.there_after and not plan.there_before),
        _numbers((str(plan.outlet), plan) for plan in rework.outlets),
        _numbers((plan.unit, plan) for plan in rework.feeds if plan.after is not None),
    )


def marked(table: Table, by_column: dict[str, dict[str, str]]) -> Table:
    """The table with the signs of its rows: `by_column` holds by a column's key, or several joined with a dot, the numbers by name."""
    if not any(by_column.values()):
        return table
    keys = [column.key or column.head for column in table.columns]
    rows = tuple(_marked(row, keys, by_column) for row in table.rows)
    told: Table = table.replace(rows=rows)
    return told


def _marked(row: Row, keys: list[str], by_column: dict[str, dict[str, str]]) -> Row:
    found = {
        number
        for joined, numbers in by_column.items()
        if set(joined.split(".")) <= set(keys)
        for name in _names(row, keys, joined)
        for number in filter(None, (numbers.get(name),))
    }
    signed: Row = row.replace(changed=", ".join(sorted(found, key=lambda each: (len(each), each))))
    return signed


def _names(row: Row, keys: list[str], joined: str) -> Iterable[str]:
    """The names in a cell, without what stands in brackets behind them."""
    cells = [row.cells[keys.index(key)].text for key in joined.split(".")]
    return (name.partition(" (")[0] for name in ".".join(cells).split(", "))


def _numbers(pieces: Iterable[tuple[str, Piece]]) -> dict[str, str]:
    return {name: NONE_SAID if piece.change is None else str(piece.change) for name, piece in pieces}
