"""Built from two sheets: who has only the texts of the deck drawing and the cells of the wiring sheet has every lead with both its jacks."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from cases import ROOT, worked
from dealt_decks import dealt
from svg_collisions import painted

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.results import Results
from rigc.model.jacks import Port
from rigc.output.svg import inline
from rigc.reports.content import Drawing, Sheet, Table
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet

EXAMPLES = sorted(path.parent.name for path in (ROOT / "examples").glob("*/board.rig"))

UNLIKE = ("tests/output/rigs/small-bass.rig", "tests/output/rigs/two-tiers.rig")
"""One whose places nobody stated, and one with a raised row."""

MARK = re.compile(r"[A-Z]+\d+[a-z]?")
UNPLACED = re.compile(r"([\w-]+)(?: \((\w+)\))?: ([^;]*) ([\w-]+)(?:;|$)")
"""What stands in a line below a crowded drawing: `marl (left): A02 in`."""
End = tuple[str, str]  # a jack in full, and the side of its thing


def drawn(of: Results) -> dict[str, set[End]]:
    """From the texts of the drawings alone: the ends of each lead. What the flag shows must be what its title says in full."""
    sheet: Sheet = of.call(deck_drawing)
    found: dict[str, set[End]] = {}
    for block in sheet.blocks:
        if not isinstance(block, Drawing) or not block.name.startswith(("plan", "below")):
            continue
        for text in painted(inline(block, "x")).texts:
            for thing, side, marks, jack in UNPLACED.findall(text.words.removeprefix("Without room above: ")):
                for mark in MARK.findall(marks):
                    found.setdefault(mark, set()).add((f"{thing}.{jack}", side))
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


def assert_rebuilt(of: Results) -> None:
    """Each lead of the model, and none besides but the Y leads and adaptors that it has too, with both its jacks; of those on a deck
    each on its side of its thing."""
    told, cells = drawn(of), wired(of)
    points = of.get(Placement).points
    leads = of.get(Leads).all
    assert len(leads) > 5
    marks = {lead.mark for lead in leads}
    assert marks <= told.keys() | cells.keys() <= marks | {special.mark for special in of.get(SpecialLeads).all}
    for mark in marks:
        ports = {port for lead in leads if lead.mark == mark for port in (lead.start, lead.end)}
        assert told.get(mark, set()) == {(str(port), side(of, port)) for port in ports if port in points}, mark
        assert {port for port, _ in told.get(mark, set())} | cells.get(mark, set()) == set(map(str, ports)), mark


@pytest.mark.parametrize("board", [*(f"examples/{name}/board.rig" for name in EXAMPLES), *UNLIKE])
def test_every_lead_with_both_jacks_and_their_sides(board: str) -> None:
    assert_rebuilt(worked(board))


@pytest.mark.parametrize(
    "seed", [seed if seed in (1, 4) else pytest.param(seed, marks=pytest.mark.long) for seed in range(30)]
)
def test_every_lead_of_dealt_rigs(seed: int) -> None:
    assert_rebuilt(dealt(seed))
