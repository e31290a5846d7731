"""The power one-line: every outlet and unit is drawn, within the ground, and told in words."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from drawing_faults import drawing_faults
from small_rigs import block, results_of

from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.results import Results
from rigc.reports.content import Drawing
from rigc.reports.power.one_line import one_lines
from rigc.reports.shapes import Label, Polyline

RIGS = ("examples/back-bedroom/board.rig", "examples/long-haul/board.rig", "tests/rigs/salt-pan.rig")


def drawn(made: Results) -> tuple[Drawing, ...]:
    found: tuple[Drawing, ...] = made.call(one_lines)
    return found


def texts(drawings: tuple[Drawing, ...]) -> list[str]:
    return [shape.text for each in drawings for shape in each.shapes if isinstance(shape, Label)]


@pytest.mark.parametrize("path", RIGS)
def test_sound_drawings(path: str) -> None:
    for each in drawn(results(ROOT / path)):
        assert drawing_faults(each) == ()


@pytest.mark.parametrize("path", RIGS)
def test_every_outlet_and_unit_is_there(path: str) -> None:
    made = results(ROOT / path)
    found, power = texts(drawn(made)), made.get(PowerAssignment)
    assert {port.jack for port in power.loads} <= set(found)
    assert {feed.unit for feed in power.feeds} <= set(found)


def test_ac_is_dashed_and_pairs_are_told() -> None:
    """The AC lead alone is dashed; series and reversing leads say so."""
    drawings = drawn(results(ROOT / RIGS[2]))
    patterns = [shape.pattern for each in drawings for shape in each.shapes if isinstance(shape, Polyline)]
    assert sorted(patterns) == ["dashed", "solid", "solid", "solid", "solid", "solid"]
    found = texts(drawings)
    assert "series with brine.n2" in found
    assert "reversed" in found
    assert found.count("spare") == 1


def test_many_outlets_take_several_pages() -> None:
    """Three supplies of 20 outlets: none is torn apart, each page has its own name."""
    supplies = "".join(
        block("supply", f"mill{n}", "connector barrel 5.5 x 2.1 mm", "outlet o1..o20 9 V dc 100 mA isolated")
        for n in (1, 2, 3)
    )
    units = "".join(
        block("unit", f"marl{n}", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 20 mA") for n in (1, 2, 3)
    )
    power = "power {\n" + "".join(f"  marl{n} from mill{n}.o1\n" for n in (1, 2, 3)) + "}\n"
    drawings = drawn(results_of(supplies + units + power))
    assert [each.name for each in drawings] == ["one-line-1", "one-line-2", "one-line-3"]
    assert all(drawing_faults(each) == () for each in drawings)
