"""Leads, routes, lengths and labels -> the master table, and the table of those that have no length and why."""

from __future__ import annotations

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.stores.bought_leads import BoughtLeads
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.leads.cells import (
    cable_cell,
    colour,
    cut_cell,
    made_words,
    mass_cell,
    plug_cells,
    premade_cell,
    price_cell,
)
from rigc.traced.figure import Lacking

_COLUMNS = (
    Column("id"),
    Column("class"),
    Column("from"),
    Column("to"),
    Column("plug A", folds="plug A {}"),
    Column("plug B", folds="plug B {}"),
    Column("stock", folds="of {}"),
    Column("route", "mm", number=True),
    Column("slack", "mm", number=True),
    Column("finished", "mm", number=True),
    Column("cut", "mm", number=True),
    Column("next premade", "mm", number=True),
    Column("colour", folds="colour {}"),
    Column("label A"),
    Column("label B"),
    Column("status", folds="{}"),
)
_COSTS = Column("bought: price", key="price")
_WEIGHS = Column("bought: mass", "g", number=True, key="mass")


def lead_table(rig: Rig, leads: Leads, lengths: CableLengths, labels: Labels, bought: BoughtLeads) -> Table:
    """One row for each lead that stays on the board; price and mass of bought leads only where the stock states such."""
    found = [lead for lead in leads.all if not lead.stage]
    ready = {
        column: [cell(bought.classes[lead.signal], lead.mark) for lead in found]
        for column, cell in ((_COSTS, price_cell), (_WEIGHS, mass_cell))
    }
    told = {column: cells for column, cells in ready.items() if any(cell.text for cell in cells)}
    rows = tuple(
        Row((*_cells(rig, lead, lengths, labels), *(cells[at] for cells in told.values())))
        for at, lead in enumerate(found)
    )
    return Table("leads", "Leads", (*_COLUMNS, *told), rows, empty="no leads on the board", landscape=True)


def stuck_table(leads: Leads, routes: CableRoutes) -> Table | None:
    """The leads that have no length, each with the reason; None if all have one."""
    rows = []
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        mains = lead.signal == "mains"
        known = route is not None and (route.between or mains) and lead.existing_mm is not None
        if route is not None and route.length is None and not known:
            reason = f"for want of {route.reason}" if route.missing else route.reason
            if mains:
                reason = "a mains lead is bought: lay it on the board, and write its length behind it"
            rows.append(Row((Cell(lead.mark), Cell(str(lead.start)), Cell(str(lead.end)), Cell(reason))))
    columns = (Column("id"), Column("from"), Column("to"), Column("reason"))
    return Table("without-length", "Leads without a length", columns, tuple(rows)) if rows else None


def _cells(rig: Rig, lead: Lead, lengths: CableLengths, labels: Labels) -> tuple[Cell, ...]:
    at_start, at_end = labels.texts[lead.mark]
    return (
        Cell(lead.mark, strong=True),
        Cell(lead.signal, mark=lead.make.kind),
        Cell(str(lead.start)),
        Cell(str(lead.end)),
        *plug_cells(lead),
        cable_cell(lead),
        *_lengths(lead, lengths),
        Cell(colour(rig, lead)),
        Cell(at_start),
        Cell(at_end),
        Cell(made_words(lead, _status(rig, lead, lengths))),
    )


def _lengths(lead: Lead, lengths: CableLengths) -> tuple[Cell, ...]:
    length = lengths.lengths.get(lead.mark)
    if length is None and lead.existing_mm is not None:
        there = figure_cell(lengths.as_supplied[lead.mark], strong=True)
        return (Cell("", mark="no route"), Cell(""), there, *(Cell(""),) * 2)
    if length is None:
        return (Cell("", mark="no length"), *(Cell(""),) * 4)
    return (
        figure_cell(length.way),
        figure_cell(length.slack),
        figure_cell(length.made, strong=True),
        cut_cell(length),
        premade_cell(length),
    )


def _status(rig: Rig, lead: Lead, lengths: CableLengths) -> str:
    """With the length as supplied, of a lead that is not made here."""
    how, supplied = status(rig, lead), lengths.as_supplied[lead.mark]
    if how == "make" or isinstance(supplied, Lacking):
        return how
    off = None if lead.existing_mm is None else lead.existing_mm.spread
    return f"{how}, {supplied.text} mm" + ("" if off is None else f" ({off.typed})")
