"""Offers -> each lead as it would be made here, beside the premade one that would do."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.stores.made_or_bought import MadeOrBought
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.leads.cells import cut_cell, premade_cell
from rigc.traced.figure import Figure

_COLUMNS = (
    Column("id"),
    Column("class"),
    Column("made here: finished", "mm", number=True, key="finished"),
    Column("made here: cut", "mm", number=True, key="cut"),
    Column("bought: next premade", "mm", number=True, key="premade"),
    Column("bought is longer by", "mm", number=True, key="longer"),
)
_PRICE = Column("parts to make it", key="parts")
_BOUGHT = Column("bought costs", key="bought_price")
_WEIGHS = Column("bought weighs", "g", number=True, key="bought_mass")


def made_or_bought(offers: MadeOrBought) -> Table:
    """A row for each lead of the board with a length that is not fixed to its unit or brick; the price of its parts, and price and
    mass of the premade lead, only where the stock states such."""
    stated = [
        (column, figures)
        for column, figures in (
            (_PRICE, [offer.parts for offer in offers.all]),
            (_BOUGHT, [offer.price for offer in offers.all]),
            (_WEIGHS, [offer.mass for offer in offers.all]),
        )
        if any(figure is not None for figure in figures)
    ]
    rows = (
        Row((*_cells(offer.length), *(_cell(column, figures[at]) for column, figures in stated)))
        for at, offer in enumerate(offers.all)
    )
    columns = (*_COLUMNS, *(column for column, _ in stated))
    caption = "Made here or bought; coil marks a bought lead that is longer than its way takes up"
    return Table("made-or-bought", caption, columns, tuple(rows), empty="no lead has a length")


def _cell(column: Column, figure: Figure | None) -> Cell:
    return figure_cell(figure, lacking="", with_unit=not column.number)


def _cells(length: Length) -> tuple[Cell, ...]:
    more = figure_cell(length.premade_more, lacking="")
    if length.premade is not None and length.premade > length.most:
        more = more.replace(mark="coil")
    made = (figure_cell(length.made), cut_cell(length))
    return Cell(length.mark, strong=True), Cell(length.signal), *made, premade_cell(length), more
