"""Built from two sheets: who has only the texts of the deck drawing and the cells of the wiring sheet has every lead with both its jacks."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from cases import ROOT, worked
from svg_collisions import painted

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.model.jacks import Port
from rigc.output.svg import inline
from rigc.reports.content import Drawing, Sheet, Table
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet

EXAMPLES = sorted(path.parent.name for path in (ROOT / "examples").glob("*/board.rig"))

MARK = re.compile(r"[A-Z]+\d+[a-z]?")
End = tuple[str, str]  # a jack in full, and the side of its thing


def drawn(of: Results) -> dict[str, set[End]]:
    """From the texts of the drawings alone: the ends of each lead. What the flag shows must be what its title says in full."""
    sheet: Sheet = of.call(deck_drawing)
    found: dict[str, set[End]] = {}
    for block in sheet.blocks:
        if not isinstance(block, Drawing) or not block.name.startswith(("plan", "below")):
            continue
        for text in painted(inline(block, "x")).texts:
            shown, _, full = text.title.partition(": ")
            if not full or text.words != shown:
                continue
            port, _, side = full.partition(", ")
            assert shown.split()[-1] == port.partition(".")[2]
            for mark in MARK.findall(shown.rpartition(" ")[0]):
                found.setdefault(mark, set()).add((port, side.removesuffix(" side")))
    return found


def wired(of: Results) -> dict[str, set[str]]:
    """From the cells of the wiring sheet alone: the jacks of each lead."""
    sheet: Sheet = of.call(wiring_sheet)
    found: dict[str, set[str]] = {}
    for table in sheet.blocks:
        if not isinstance(table, Table):
            continue
        heads = [column.head for column in table.columns]
        rows = [dict(zip(heads, (cell.text for cell in row.cells), strict=True)) for row in table.rows]
        if "in jack" in heads:
            for before, here in pairwise(rows):
                ends = zip(_ports(before, "out jack"), _ports(here, "in jack"), strict=False)
                for mark, (start, end) in zip(MARK.findall(here["lead in"]), ends, strict=False):
                    found.setdefault(mark, set()).update((start, end))
        elif heads[:1] == ["lead"]:
            start, end = heads[1:3]
            for row in rows:
                for mark in MARK.findall(row["lead"]):
                    found.setdefault(mark, set()).update((row[start], row[end]))
    return found


def _ports(row: dict[str, str], column: str) -> list[str]:
    return [f"{row['unit'].partition(' ')[0]}.{jack}" for jack in row[column].split(", ") if jack]


def side(of: Results, port: Port) -> str:
    jack, supply = of.rig.jack(port), of.rig.supplies.get(port.thing)
    outlet = None if supply is None else supply.outlet(port.jack)
    return (jack.side if jack is not None else outlet.side if outlet is not None else None) or ""


@pytest.mark.parametrize("board", EXAMPLES)
def test_every_lead_with_both_jacks_and_their_sides(board: str) -> None:
    of = worked(f"examples/{board}/board.rig")
    told, cells = drawn(of), wired(of)
    points = of.get(Placement).points
    leads = of.get(Leads).all
    assert len(leads) > 5
    for lead in leads:
        ports = (lead.start, lead.end)
        on_board = {(str(port), side(of, port)) for port in ports if port in points}
        assert told.get(lead.mark, set()) == on_board, lead.mark
        rebuilt = {port for port, _ in told.get(lead.mark, set())} | cells.get(lead.mark, set())
        assert rebuilt == {str(port) for port in ports}, lead.mark
