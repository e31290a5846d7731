"""Letters stand free in the flow, the power one-line, the ground one-line and the markers: counted from the SVG on the worked boards."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from cases import ROOT, sheet_of
from svg_collisions import collisions

from rigc.output.svg import inline
from rigc.reports.content import Drawing, Sheet
from rigc.reports.sheets.bench.label_sheet import label_sheet
from rigc.reports.sheets.power.ground_sheet import ground_sheet
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.stage.signal_flow import signal_flow

BOARDS = (
    *sorted(str(path.relative_to(ROOT)) for path in (ROOT / "examples").glob("*/board.rig")),
    *sorted(str(path.relative_to(ROOT)) for path in (ROOT / "tests/rigs").glob("*.rig")),
)


@pytest.mark.parametrize("sheet", [signal_flow, power_table, label_sheet, ground_sheet])
@pytest.mark.parametrize("board", BOARDS)
def test_no_letter_meets_a_letter_a_line_or_an_outline(board: str, sheet: Callable[..., Sheet]) -> None:
    made: Sheet = sheet_of(board, sheet)
    drawn = [block for block in made.blocks if isinstance(block, Drawing)]
    assert drawn or not board.startswith("examples")
    assert {each.name: told for each in drawn if (told := collisions(inline(each, "x")))} == {}
