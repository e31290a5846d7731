"""Rows that a revision changed bear its numbers, on the sheets that the crew plugs by. Rigs are invented."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from cases import READER
from small_rigs import HEAD, block, unit

from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.reports.content import Sheet, Table
from rigc.reports.sheets.bench.cable_list import cable_list
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet
from rigc.source import Source

DC = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 10 mA")
SUPPLY = block("supply", "brook", "connector barrel 5.5 x 2.1 mm", "outlet o1..o3 9 V dc 200 mA isolated")
ENDS = block("instrument", "guitar") + block("amp", "combo", "input in ts") + SUPPLY
BEFORE = ENDS + unit("tern", *DC) + "chain guitar -> tern -> combo\n" + block("power", "", "tern from brook.o1")
AFTER = (
    ENDS + unit("tern", *DC) + unit("fen", *DC) + "chain guitar -> tern -> fen -> combo\n"
    + block("power", "", "tern from brook.o1", "fen from brook.o2")
)  # fmt: skip


def after(*lines: str) -> Results:
    """Revision B of a board that gets another unit, with these lines in its head."""
    head = HEAD.replace("revision A 2026-03-02", "\n  ".join(("revision B 2026-06-02", *lines)))
    texts = {"a.rig": HEAD + BEFORE, "b.rig": head + AFTER}
    made = compile_rig(lambda name: Source(name, texts[name]), "b.rig", READER)
    assert made.results is not None, [each.message for each in made.findings]
    return made.results


def signs(results: Results, sheet: Callable[..., object], table: str) -> dict[str, str]:
    """The numbers by the first cells of the rows; of the table of outlets by the second."""
    made = results.call(sheet)
    assert isinstance(made, Sheet)
    found = made.block(table)
    assert isinstance(found, Table)
    at = 1 if table in ("by_outlet", "signal_1") else 0
    return {row.cells[at].text: row.changed for row in found.rows}


@pytest.mark.parametrize(
    ("change", "sign"),
    [('change 3 design "one more" touches fen', "3"), ('change 3 design "another" touches guitar', "–")],
)
def test_a_unit_that_came_with_its_lead_and_outlet(change: str, sign: str) -> None:
    """A sign without a number where no change names it. `tern` stays, and so does the lead before it."""
    results = after('follows A "a.rig"', change)
    told = signs(results, wiring_sheet, "signal_1")
    assert (told["guitar"], told["tern"], told["fen"]) == ("", "", sign)
    assert signs(results, wiring_sheet, "power_leads") == {"D1": "", "D2": sign}
    assert signs(results, power_table, "by_outlet") == {"o1": "", "o2": sign, "o3": ""}
    assert signs(results, power_table, "by_unit") == {"tern": "", "fen": sign}
    assert signs(results, cable_list, "leads")["D2"] == sign


def test_the_first_revision_bears_no_sign() -> None:
    results = after()
    assert set(signs(results, wiring_sheet, "signal_1").values()) == {""}
    assert set(signs(results, cable_list, "leads").values()) == {""}
