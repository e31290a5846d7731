"""The power one-line: every outlet and unit is drawn, within the ground, and told in words."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from drawing_faults import drawing_faults
from small_rigs import block, results_of

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.results import Results
from rigc.reports.content import Drawing
from rigc.reports.drawings.power.one_line import WIDTH, one_lines
from rigc.reports.drawings.shapes import Label, Polyline

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
    assert "series Y1 with brine.n2" in found
    assert "REVERSED" in found
    assert found.count("spare") == 1


def supplied(outlets: str, count: int = 1) -> Results:
    """Supplies with these outlets, each feeding one unit from its first."""
    numbers = range(1, count + 1)
    supplies = "".join(block("supply", f"mill{n}", "connector barrel 5.5 x 2.1 mm", outlets) for n in numbers)
    units = "".join(
        block("unit", f"marl{n}", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 20 mA") for n in numbers
    )
    power = "power {\n" + "".join(f"  marl{n} from mill{n}.o1\n" for n in numbers) + "}\n"
    return results_of(supplies + units + power)


def test_supplies_that_fit_are_kept_whole() -> None:
    """Three supplies of 10 outlets: 12 + 75 + 8 + 75 + 8 = 178 mm for two are more than 150, so each has a page."""
    drawings = drawn(supplied("outlet o1..o10 9 V dc 100 mA isolated", 3))
    assert [each.name for each in drawings] == ["one-line-1", "one-line-2", "one-line-3"]
    assert all(drawing_faults(each) == () for each in drawings)
    assert not any("part" in text for text in texts(drawings))


def test_two_supplies_of_eight_share_a_page() -> None:
    """12 + 60 + 8 + 60 + 8 = 148 mm."""
    (drawing,) = drawn(supplied("outlet o1..o8 9 V dc 100 mA isolated", 2))
    assert drawing.height_mm == 148


def test_a_supply_that_no_page_holds_goes_on_on_the_next() -> None:
    """40 outlets: 130 mm / 7.5 = 17 rows on a page, so 17 + 17 + 6; the six below need 6 rows and more than their text."""
    drawings = drawn(supplied("outlet o1..o40 9 V dc 100 mA isolated"))
    assert [sum(text.startswith("o") and text[1:].isdigit() for text in texts((each,))) for each in drawings] == [
        17,
        17,
        6,
    ]
    assert [text for text in texts(drawings) if text.startswith("part")] == [
        "part 1 of 3",
        "part 2 of 3",
        "part 3 of 3",
    ]
    assert all(each.height_mm <= 150 and drawing_faults(each) == () for each in drawings)


def test_a_common_that_is_cut_is_told() -> None:
    drawings = drawn(supplied("outlet o1..o20 9 V dc 100 mA common left"))
    assert [texts((each,)).count("goes on: left") for each in drawings] == [1, 1]


def test_what_is_said_beside_a_unit_stands_right_of_all_units() -> None:
    """The parallel outlets of the touring rig: nothing is written between two leads, where the next one's words stand."""
    (page,) = drawn(results(ROOT / "examples/long-haul-d/board.rig"))
    beside = [shape for shape in page.shapes if isinstance(shape, Label) and shape.text.startswith("parallel Y1 with")]
    assert len(beside) == 2
    assert all(WIDTH < shape.x < page.width_mm for shape in beside)
    (home,) = drawn(results(ROOT / "examples/back-bedroom/board.rig"))
    assert home.width_mm == WIDTH
