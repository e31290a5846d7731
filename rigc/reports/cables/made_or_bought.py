"""Leads and lengths -> each lead as it would be made here, beside the premade one that would do."""

from __future__ import annotations

from rigc.analysis.cables.hand_made_price import hand_made_price
from rigc.analysis.cables.ready_lead import next_mass, next_price
from rigc.analysis.computations.cable_lengths import CableLengths, Length
from rigc.analysis.computations.leads import Lead, Leads
from rigc.diagnostics.figures import grams, money
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.reports.cables.cells import cut_cell, premade_cell
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell

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


def made_or_bought(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """A row for each lead of the board with a length that is not fixed to its unit or brick; the price of its parts, and price and mass of the premade lead, only where the stock
    states such."""
    found = [
        (lead, lengths.lengths[lead.mark])
        for lead in leads.all
        if lead.mark in lengths.lengths and lead.captive is None
    ]
    priced = {
        column: prices
        for column, price in ((_PRICE, _price), (_BOUGHT, _bought), (_WEIGHS, _bought_mass))
        if any(prices := [price(rig, lead, length) for lead, length in found])
    }
    rows = (
        Row((*_cells(length), *(Cell(prices[at]) for prices in priced.values())))
        for at, (lead, length) in enumerate(found)
    )
    columns = (*_COLUMNS, *priced)
    caption = "Made here or bought; coil marks a bought lead that is longer than its way takes up"
    return Table("made-or-bought", caption, columns, tuple(rows), empty="no lead has a length")


def _cells(length: Length) -> tuple[Cell, ...]:
    more = figure_cell(length.premade_more, lacking="")
    if length.premade is not None and length.premade > length.most:
        more = more.replace(mark="coil")
    made = (figure_cell(length.made), cut_cell(length))
    return Cell(length.mark, strong=True), Cell(length.signal), *made, premade_cell(length), more


def _price(rig: Rig, lead: Lead, length: Length) -> str:
    price = hand_made_price(rig, lead, length.cut)
    return "" if price is None else money(*price)


def _bought(rig: Rig, lead: Lead, length: Length) -> str:
    """What the next premade lead costs."""
    price = next_price(rig, lead, length)
    return "" if price is None else money(*amount_and_currency(price))


def _bought_mass(rig: Rig, lead: Lead, length: Length) -> str:
    mass = next_mass(rig, lead, length)
    return "" if mass is None else grams(mass.value)
