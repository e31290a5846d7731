"""Ways of phantom power -> the table of which inputs give it, to what, to be set before anything is plugged."""

from __future__ import annotations

from rigc.analysis.signal.phantom_ways import PhantomWay, PhantomWays
from rigc.model.jacks import Phantom, Port
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


def phantom_words(ways: PhantomWays, start: Port, end: Port) -> str:
    """How phantom power is set for a lead between these jacks, before it is plugged; empty where it has none to do with it."""
    here = [way for way in ways.all if {way.input, way.output} & {start, end}]
    return "; ".join(dict.fromkeys("not said" if way.gives is None else _setting(way.gives) for way in here))


def _setting(phantom: Phantom) -> str:
    return "off" if phantom.volts is None else f"on, {phantom.volts.typed}"


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
    return Cell(_setting(phantom), strong=True)


def _wanted(phantom: Phantom | None) -> Cell:
    if phantom is None:
        return Cell("", mark="not said")
    volts = "" if phantom.volts is None else f" {phantom.volts.typed}"
    return Cell(f"{_OUTPUT[phantom.how]}{volts}")
