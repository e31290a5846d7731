"""Ways of phantom power -> the table of which inputs give it, to what, to be set before anything is plugged."""

from __future__ import annotations

from rigc.analysis.signal.phantom_ways import PhantomWay, PhantomWays
from rigc.model.jacks import Phantom
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (Column("input"), Column("phantom power"), Column("output that drives it"), Column("that output"))
_OUTPUT = {
    "gives": "gives",
    "needs": "needs",
    "bears": "bears it",
    "never": "must never get it",
    "none": "has none to do with it",
}


def phantom_table(ways: PhantomWays) -> Table | None:
    """A row for each way, to be ticked; None where nothing speaks of phantom power."""
    rows = tuple(map(_row, ways.all))
    caption = "Phantom power: set it before plugging, with the channel muted"
    return Table("phantom", caption, _COLUMNS, rows, tick=True) if rows else None


def _row(way: PhantomWay) -> Row:
    return Row(
        (
            Cell("" if way.input is None else str(way.input), strong=True),
            _given(way.gives),
            Cell(str(way.output), strong=True),
            _wanted(way.wants),
        )
    )


def _given(phantom: Phantom | None) -> Cell:
    if phantom is None:
        return Cell("", mark="not said")
    return Cell("off" if phantom.volts is None else f"on, {phantom.volts.typed}", strong=True)


def _wanted(phantom: Phantom | None) -> Cell:
    if phantom is None:
        return Cell("", mark="not said")
    volts = "" if phantom.volts is None else f" {phantom.volts.typed}"
    return Cell(f"{_OUTPUT[phantom.how]}{volts}")
