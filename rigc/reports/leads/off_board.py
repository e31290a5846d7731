"""Leads to instruments, amps and desks, and adaptors -> their tables: they are listed but not routed."""

from __future__ import annotations

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.leads.cells import made_words, plug_cells

_STAGE = (
    Column("id"),
    Column("class", folds="{}"),
    Column("from"),
    Column("to"),
    Column("plug A"),
    Column("plug B"),
    Column("stock", folds="of {}"),
    Column("length", "mm", number=True),
    Column("label A"),
    Column("label B"),
    Column("status", folds="{}"),
)


def stage_table(rig: Rig, leads: Leads, lengths: CableLengths, labels: Labels) -> Table:
    """The stage leads, as long as the source says; blank where it does not."""
    rows = tuple(_stage(rig, lead, lengths, labels) for lead in leads.all if lead.stage)
    return Table("stage-leads", "Stage leads: not routed, not made here", _STAGE, rows, empty="no stage leads")


def adaptor_table(special: SpecialLeads) -> Table | None:
    """The adaptors and what they stand between, those that the source does not number too; None if there are none."""
    rows = [
        Row(
            (
                Cell(each.mark, strong=True),
                Cell(each.kind),
                Cell(", ".join(str(outlet) for outlet in each.outlets)),
                Cell(", ".join(each.units)),
            )
        )
        for each in special.all
        if not each.itself and each.kind != "Y"
    ]
    columns = (Column("id"), Column("kind"), Column("from"), Column("for"))
    return Table("adaptors", "Adaptors", columns, tuple(rows)) if rows else None


def _stage(rig: Rig, lead: Lead, lengths: CableLengths, labels: Labels) -> Row:
    at_start, at_end = labels.texts[lead.mark]
    return Row(
        (
            Cell(lead.mark, strong=True),
            Cell(lead.signal, mark=lead.make.kind),
            Cell(str(lead.start)),
            Cell(str(lead.end)),
            *plug_cells(lead),
            Cell(lead.cable or ""),
            figure_cell(lengths.as_supplied[lead.mark], lacking=""),
            Cell(at_start),
            Cell(at_end),
            Cell("bring" if lead.existing_mm is None else made_words(lead, status(rig, lead))),
        )
    )
