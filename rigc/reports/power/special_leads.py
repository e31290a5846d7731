"""SpecialLeads and labels -> the table of leads and adaptors that must not get into the general bag."""

from __future__ import annotations

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.special_leads import SpecialLead, SpecialLeads
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("id"),
    Column("kind"),
    Column("from"),
    Column("for"),
    Column("plugs at the outlets"),
    Column("plugs at the units"),
    Column("label"),
)


def special_table(special: SpecialLeads, labels: Labels) -> Table:
    """A row for every Y, series, parallel, reversing and size lead."""
    rows = tuple(_row(each, labels) for each in special.all)
    return Table(
        "adaptors", "Y, series, parallel and reversing leads, adaptors", _COLUMNS, rows, empty="", landscape=True
    )


def _row(each: SpecialLead, labels: Labels) -> Row:
    return Row(
        (
            Cell(
                each.mark, strong=True, mark="" if each.stated or each.kind in ("Y", "reversing") else "proposed number"
            ),
            Cell(each.kind),
            Cell(", ".join(str(port) for port in each.outlets) or "?"),
            Cell(", ".join(each.units)),
            Cell(each.plugs[0]),
            Cell(each.plugs[1]),
            Cell("; ".join(labels.texts[each.mark]) if each.itself else " / ".join(each.lines)),
        )
    )
