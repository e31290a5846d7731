"""A column of a table told on one line: its heading with what fills its cells -> the table."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from rigc.reports.content import Cell, Column, Row, Table

T = TypeVar("T")

Columns = tuple[tuple[Column, Callable[[T], Cell]], ...]
"""Each column with the cell that it has in the row of a thing."""


def table(
    name: str, caption: str, columns: Columns[T], things: Iterable[T], *, empty: str = "", landscape: bool = False
) -> Table:
    """A row for each thing."""
    rows = tuple(Row(tuple(cell(thing) for _, cell in columns)) for thing in things)
    return Table(name, caption, tuple(column for column, _ in columns), rows, empty=empty, landscape=landscape)
