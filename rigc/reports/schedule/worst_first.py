"""The rows of a table -> the same rows, those with a failure first."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.reports.content import Row


def worst_first(rows: Iterable[Row]) -> tuple[Row, ...]:
    """A row that bears a mark in capitals (`FAIL`) before all that bear none; else as they were, totals last."""
    return tuple(sorted(rows, key=lambda row: (row.total, not any(cell.mark.isupper() for cell in row.cells))))
