"""Leads and lengths -> each lead as it would be made here, beside the premade one that would do."""

from __future__ import annotations

from rigc.analysis.cables.hand_made_price import hand_made_price
from rigc.analysis.computations.cable_lengths import CableLengths, Length
from rigc.analysis.computations.leads import Lead, Leads
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("id"),
    Column("class"),
    Column("made here: finished", "mm", number=True, key="finished"),
    Column("made here: cut", "mm", number=True, key="cut"),
    Column("bought: next premade", "mm", number=True, key="premade"),
    Column("bought is longer by", "mm", number=True, key="longer"),
)
_PRICE = Column("parts to make it", key="parts")


def made_or_bought(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """A row for each lead of the board with a length; the price of its parts only where the stock states prices."""
    found = [(lead, lengths.lengths[lead.mark]) for lead in leads.all if lead.mark in lengths.lengths]
    prices = [_price(rig, lead, length) for lead, length in found]
    priced = any(prices)
    rows = (
        Row((*_cells(lead, length), *((Cell(price),) if priced else ())))
        for (lead, length), price in zip(found, prices, strict=True)
    )
    columns = (*_COLUMNS, _PRICE) if priced else _COLUMNS
    caption = "Made here or bought: a coil is more than the lead may be long"
    return Table("made-or-bought", caption, columns, tuple(rows), empty="no lead has a length")


def longer_by(length: Length) -> str:
    """How much longer the premade lead is than the one made here, in mm; `none` if none will do."""
    if length.premade is None:
        return "none"
    more = length.premade - length.finished
    return f"−{millimetres(-more)}" if more < 0 else millimetres(more)


def _cells(lead: Lead, length: Length) -> tuple[Cell, ...]:
    cut = "" if length.cut is None else millimetres(length.cut)
    bought = ("none" if length.premade_listed else "") if length.premade is None else millimetres(length.premade)
    coil = "coil" if length.premade is not None and length.premade > length.most else ""
    more = Cell("" if length.premade is None else longer_by(length), mark=coil)
    mark = "assumed" if length.assumed else ""
    made = (Cell(millimetres(length.finished), mark=mark), Cell(cut, mark=mark if cut else ""))
    return Cell(lead.mark, strong=True), Cell(lead.signal), *made, Cell(bought), more


def _price(rig: Rig, lead: Lead, length: Length) -> str:
    price = hand_made_price(rig, lead, length.cut)
    return "" if price is None else f"{price[0]:.2f} {price[1]}"
