"""Measured leads against the design -> the table that says which may stay, and which were not measured."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths, Length
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.diagnostics.decimals import decimals
from rigc.model.records import AsBuilt, BuiltLead
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.tests.reading_cells import BY, DATE

_COLUMNS = (
    Column("lead"),
    Column("from"),
    Column("to"),
    Column("designed", "mm", number=True),
    Column("measured", "mm", number=True),
    Column("more", "mm", number=True),
    Column("may be", "mm"),
    Column("verdict"),
    Column("plugs as built", key="plugs"),
    DATE,
    BY,
)


def lead_table(built: AsBuilt, name: str, leads: Leads, lengths: CableLengths) -> Table:
    """A row for each lead that was measured: designed and measured finished lengths, and the window in which it may stay."""
    by_mark = {lead.mark: lead for lead in leads.all}
    rows = tuple(_row(each, by_mark.get(each.mark), lengths.lengths.get(each.mark)) for each in built.leads)
    return Table(
        name,
        f"Leads as measured, revision {built.revision}: from where the cable leaves one plug to where it leaves the other",
        _COLUMNS,
        rows,
        empty="no lead was measured",
    )


def not_measured(built: AsBuilt, name: str, leads: Leads) -> Paragraph | None:
    """The leads of the board that the block does not name; None if it names all."""
    told = {each.mark for each in built.leads}
    board = [lead.mark for lead in leads.all if not lead.stage]
    left = [mark for mark in board if mark not in told]
    if not left:
        return None
    line = f"{len(left)} of {len(board)}: {', '.join(left)}. What is not measured is taken to be as designed."
    return Paragraph(name, (line,), heading="Not measured")


def _row(each: BuiltLead, lead: Lead | None, length: Length | None) -> Row:
    measured = tenths(each.length_mm.value)
    more = None if length is None else (measured - length.supplied) / 10
    return Row(
        (
            Cell(each.mark, strong=True),
            Cell("" if lead is None else str(lead.start)),
            Cell("" if lead is None else str(lead.end)),
            Cell("?" if length is None else decimals(length.supplied / 10)),
            Cell(decimals(each.length_mm.value), strong=True),
            Cell("?" if more is None else f"{'+' if more > 0 else ''}{decimals(more)}"),
            Cell("?" if length is None else f"{-(-length.least // 10)} to {length.most // 10}"),
            _verdict(measured, length),
            _plugs(each, lead),
            Cell(each.date),
            Cell(each.by),
        )
    )


def _verdict(measured: int, length: Length | None) -> Cell:
    if length is None:
        return Cell("", mark="can't check")
    if measured < length.least:
        return Cell("", mark="TOO SHORT", strong=True)
    return Cell("", mark="TOO LONG", strong=True) if measured > length.most else Cell("keep")


def _plugs(each: BuiltLead, lead: Lead | None) -> Cell:
    if each.plugs is None:
        return Cell("as designed")
    words = f"{each.plugs[0]} to {each.plugs[1]}"
    return Cell(words, mark="" if lead is None or lead.ends == each.plugs else "not as designed")
