"""How the rework sheet writes things: lists of leads, done pieces, columns that are only there where they say
something."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rigc.analysis.revision.plan.plan_records import Piece
from rigc.reports.content import Cell, Column, Row, Table

DONE = "done"


def first_cell(text: str, piece: Piece) -> Cell:
    """The first cell of a piece's row; what is done already says so."""
    return Cell(text, mark=DONE if piece.done else "")


def change_cell(piece: Piece) -> Cell:
    """The number of the change that a piece belongs to."""
    return Cell("" if piece.change is None else str(piece.change))


CHANGE = Column("ch.", number=True, key="change")


def tidy(table: Table, always: int = 1) -> Table:
    """The table without columns that are empty in every row, but for the first ones (`always` many)."""
    kept = [at for at in range(len(table.columns)) if at < always or any(row.cells[at].text for row in table.rows)]
    rows = tuple(Row(tuple(row.cells[at] for at in kept), row.total) for row in table.rows)
    tidied: Table = table.replace(columns=tuple(table.columns[at] for at in kept), rows=rows)
    return tidied


def ends_of(names: Iterable[str]) -> str:
    """Label ends by lead: `A14 A` and `A14 B` are `A14`, one end alone is `A15 end A`."""
    found: dict[str, list[str]] = {}
    for name in names:
        mark, _, end = name.partition(" ")
        found.setdefault(mark, []).append(end)
    return listed([mark if len(ends) > 1 or ends == [""] else f"{mark} end {ends[0]}" for mark, ends in found.items()])


def listed(names: Sequence[str]) -> str:
    """Names in a row."""
    return ", ".join(names)


def from_to(before: str, after: str) -> str:
    """A change of a value; one side alone where the other is empty."""
    return f"{before} → {after}" if before and after and before != after else after or before
