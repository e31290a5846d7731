"""The column of zones: where on the plan a thing of the row is, or from where to where its lead goes."""

from __future__ import annotations

from rigc.reports.content import Column, Row, Table

ZONE = Column("zone")


def zoned(table: Table) -> Table:
    """The table without its column of zones where no row has one: no deck of known size, or nothing placed on it."""
    at = table.columns.index(ZONE)
    if any(row.cells[at].text for row in table.rows):
        return table
    rows = tuple(row.replace(cells=_without(row, at)) for row in table.rows)
    bare: Table = table.replace(columns=(*table.columns[:at], *table.columns[at + 1 :]), rows=rows)
    return bare


def _without(row: Row, at: int) -> tuple[object, ...]:
    return (*row.cells[:at], *row.cells[at + 1 :])
