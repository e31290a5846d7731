"""Leads and lengths -> totals by class, and how many plugs of each kind they take."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths, Total
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.reports.cables.cells import millimetres, status
from rigc.reports.content import Cell, Column, Row, Table

_TOTALS = (
    Column("class"),
    Column("leads", number=True),
    Column("finished", "mm", number=True),
    Column("cut", "mm", number=True),
    Column("next premade", "mm", number=True),
    Column("plugs", number=True),
)
_PLUGS = (
    Column("plug"),
    Column("to fit", number=True),
    Column("on leads that are there or bought", number=True, key="ready"),
)


def totals_table(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """A row for each class of lead on the board; a lead without a length is named, not counted as nothing."""
    plugs = _plugs(rig, leads)
    rows = tuple(
        _total(total, sum(1 for lead, _ in plugs if lead.signal == total.signal)) for total in lengths.totals.values()
    )
    return Table("totals", "Totals by class", _TOTALS, rows, empty="no leads on the board")


def plug_table(rig: Rig, leads: Leads) -> Table:
    """How many plugs of each kind, in the order of the stock: to be fitted here, and on leads that come with them."""
    counts = {kind: [0, 0] for kind in rig.stock.plugs}
    for lead, plug in _plugs(rig, leads):
        counts[plug][status(rig, lead) != "make"] += 1
    rows = tuple(
        Row((Cell(kind), Cell(str(fitted)), Cell(str(ready))))
        for kind, (fitted, ready) in counts.items()
        if fitted + ready
    )
    return Table("plugs", "Plugs", _PLUGS, rows, empty="no plugs")


def _total(total: Total, plugs: int) -> Row:
    mark = f"without {', '.join(total.unrouted)}" if total.unrouted else ""
    return Row(
        (
            Cell(total.signal),
            Cell(str(total.leads)),
            Cell(millimetres(total.finished), mark=mark),
            Cell(millimetres(total.cut) if total.cut else ""),
            Cell(millimetres(total.premade) if total.premade else ""),
            Cell(str(plugs)),
        )
    )


def _plugs(rig: Rig, leads: Leads) -> list[tuple[Lead, str]]:
    """Every plug on the board's leads; legs of a Y lead have the one at their outlet in common, soldered ends have none."""
    seen: set[tuple[str, Port]] = set()
    plugs = []
    for lead in leads.all:
        for port, plug in zip((lead.start, lead.end), lead.ends, strict=True):
            end = (lead.leg_of or lead.mark, port)
            if not lead.stage and plug is not None and end not in seen and not rig.stock.plugs[plug].soldered:
                plugs.append((lead, plug))
            seen.add(end)
    return plugs
