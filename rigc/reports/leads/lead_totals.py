"""Leads and lengths -> totals by class, and how many plugs of each kind they take."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.leads.lengths.cable_lengths import CableLengths, Total
from rigc.analysis.leads.plug_uses import PlugUses
from rigc.analysis.stores.bought_leads import Bought, BoughtLeads
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell, mark
from rigc.traced.figure import Answer, Figure, assumed

_TOTALS = (
    Column("class"),
    Column("leads", number=True),
    Column("finished", "mm", number=True),
    Column("cut", "mm", number=True),
    Column("next premade", "mm", number=True),
    Column("as supplied", "mm", number=True, key="supplied"),
    Column("plugs", number=True),
)
_COSTS = Column("bought: price", key="price")
_WEIGHS = Column("bought: mass", "g", number=True, key="mass")
_PLUGS = (
    Column("plug"),
    Column("to fit", number=True),
    Column("on leads that are there or bought", number=True, key="ready"),
)


def totals_table(lengths: CableLengths, bought: BoughtLeads) -> Table:
    """A row for each class of lead on the board; a lead without a length is named, not counted as nothing."""
    told = {
        column: cell
        for column, cell in ((_COSTS, _costs), (_WEIGHS, _weighs))
        if any(cell(each).text for each in bought.classes.values())
    }
    rows = tuple(
        Row(
            (
                *_total(total),
                *(cell(bought.classes[signal]) for cell in told.values()),
            )
        )
        for signal, total in lengths.totals.items()
    )
    return Table("totals", "Totals by class", (*_TOTALS, *told), rows, empty="no leads on the board")


def plug_table(uses: PlugUses) -> Table:
    """How many plugs of each kind, in the order of the stock: to be fitted here, and on leads that come with them."""
    rows = tuple(Row((Cell(use.kind), figure_cell(use.to_fit), figure_cell(use.ready))) for use in uses.all)
    return Table("plugs", "Plugs", _PLUGS, rows, empty="no plugs")


def _costs(ready: Bought) -> Cell:
    unit = "" if ready.price is None else f" {ready.price.unit}"
    return _sum(ready.price, ready.prices.values(), unit)


def _weighs(ready: Bought) -> Cell:
    return _sum(ready.mass, ready.masses.values())


def _sum(figure: Answer | Figure | None, parts: Iterable[object], unit: str = "") -> Cell:
    """A sum that lacks a part says so: a missing figure is not nothing."""
    lacks = any(part is None for part in parts)
    if figure is None:
        return Cell("", mark="not stated" if lacks else "")
    return Cell(figure.text + unit, strong=True, mark="at least" if lacks else mark(figure))


def _total(total: Total) -> tuple[Cell, ...]:
    without = f"without {', '.join(total.unrouted)}" if total.unrouted else ""
    return (
        Cell(total.signal),
        figure_cell(total.leads),
        Cell(total.finished.text, mark=without or mark(total.finished)),
        _if_any(total.cut),
        _if_any(total.premade),
        Cell(total.supplied.text, strong=True, mark=without or mark(total.supplied)),
        figure_cell(total.plugs),
    )


def _if_any(figure: Figure | Answer) -> Cell:
    return Cell(figure.text, mark="assumed" if assumed(figure) else "") if isinstance(figure, Figure) else Cell("")
