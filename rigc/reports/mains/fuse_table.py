"""Fuses -> what stands in each thing, where it is the right one, and the spares that travel."""

from __future__ import annotations

from rigc.analysis.mains.fuses import FittedFuse, Fuses
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("in"),
    Column("fuse"),
    Column("at mains of", key="at", folds="at {}"),
    Column("in scenario", key="scenario", folds="in {}"),
    Column("spares", number=True),
    Column("in bag", key="bag", folds="in {}"),
)
CAPTION = "Fuses: replaced once, by their like; what blows again is for a competent person"


def fuse_table(fuses: Fuses) -> Table | None:
    """A row for each; None where none is stated."""
    rows = tuple(_row(each) for each in fuses.all)
    return Table("fuses", CAPTION, _COLUMNS, rows) if rows else None


def _row(each: FittedFuse) -> Row:
    fuse = each.fuse
    return Row(
        (
            Cell(each.thing, strong=True),
            Cell(fuse.words, strong=True),
            Cell("" if fuse.at_v is None else fuse.at_v.typed),
            Cell(", ".join(each.scenarios) if each.wanted else "none"),
            Cell(str(each.carried)),
            Cell(", ".join(dict.fromkeys(spare.bag for spare in each.spares if spare.bag))),
        )
    )
