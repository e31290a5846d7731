"""The power one-line: every outlet and unit is drawn, within the ground, and told in words."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from drawing_faults import drawing_faults
from small_rigs import block, results_of

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.results import Results
from rigc.reports.content import Drawing
from rigc.reports.drawings.power.one_line import one_lines
from rigc.reports.drawings.shapes import THICK, THIN, Box, Circle, Label, Line, Polyline

RIGS = (
    "examples/back-bedroom/board.rig",
    "examples/long-haul/board.rig",
    "tests/rigs/salt-pan.rig",
    "tests/rigs/odd-leads.rig",
)


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


def test_ac_is_dashed() -> None:
    """Of the leads, which alone are drawn thick and begin at an outlet, the AC one alone."""
    (page,) = drawn(results(ROOT / RIGS[2]))
    leads = [shape for shape in page.shapes if isinstance(shape, Polyline) and shape.width_mm == THICK]
    assert sorted(shape.pattern for shape in leads) == ["dashed", "solid", "solid", "solid", "solid", "solid"]
    assert texts((page,)).count("spare") == 1


def boxed(page: Drawing, text: str) -> Box:
    """The smallest box around a label."""
    (label,) = (shape for shape in page.shapes if isinstance(shape, Label) and shape.text == text)
    around = [
        shape
        for shape in page.shapes
        if isinstance(shape, Box)
        and shape.x < label.x < shape.x + shape.width
        and shape.y < label.y < shape.y + shape.height
    ]
    return min(around, key=lambda box: box.width * box.height)


def test_a_series_pair_meets_in_its_adaptor_and_one_line_goes_on() -> None:
    """Leads D3 from the upper outlet and D4 from the lower end at the left edge of Y1; the one line to iris begins at its right."""
    page = drawn(results(ROOT / "tests/rigs/odd-leads.rig"))[0]
    box = boxed(page, "Y1 series")
    assert {"D3 upper", "D4 lower", "18 V DC"} <= set(texts((page,)))
    leads = [shape for shape in page.shapes if isinstance(shape, Polyline) and shape.points[-1][0] == box.x]
    ends = sorted(shape.points[-1][1] for shape in leads if shape.width_mm == THICK and shape.points[-1][1] > box.y)
    assert len(ends) == 2
    assert box.y < ends[0] < ends[1] < box.y + box.height
    (on,) = (shape for shape in page.shapes if isinstance(shape, Line) and shape.x1 == box.x + box.width)
    assert on.x2 == boxed(page, "iris").x


def test_a_reversing_lead_passes_crossed_conductors() -> None:
    page = drawn(results(ROOT / "tests/rigs/odd-leads.rig"))[0]
    box = boxed(page, "REVERSED, centre-positive")
    thin = [shape for shape in page.shapes if isinstance(shape, Polyline) and shape.width_mm == THIN]
    (one, other) = (shape for shape in thin if shape.points[0][0] == box.x)
    assert (one.points[0][1] > one.points[-1][1]) != (other.points[0][1] > other.points[-1][1])
    assert {round(shape.points[0][1] - box.y, 6) for shape in (one, other)} == {1.5, 4.5}


def test_a_y_lead_forks_at_a_dot() -> None:
    """D1 from o1 to the dot, D1a on to sedge, D1b from the dot to reed."""
    page = drawn(results(ROOT / "tests/rigs/odd-leads.rig"))[0]
    (dot,) = (shape for shape in page.shapes if isinstance(shape, Circle))
    at = {shape.text: shape.x for shape in page.shapes if isinstance(shape, Label)}
    assert at["D1"] < dot.x < at["D1a"] == at["D1b"]
    assert any(isinstance(shape, Polyline) and shape.points[0] == (dot.x, dot.y) for shape in page.shapes)


def test_a_pair_on_two_supplies_names_the_outlet_that_stands_elsewhere() -> None:
    """Each outlet's lead ends in the adaptor, drawn twice, each time with the other's name."""
    barrel = "connector barrel 5.5 x 2.1 mm"
    supplies = "".join(block("supply", name, barrel, "outlet o1 9 V dc 100 mA isolated") for name in ("mill", "weir"))
    text = supplies + block("unit", "marl", "inlet dc barrel 5.5 x 2.1 mm", "needs 18 V dc", "draws 20 mA")
    (page,) = drawn(results_of(text + "power {\n  marl from mill.o1, weir.o1 series\n}\n"))
    told = texts((page,))
    assert "marl (mill.o1 and weir.o1)" in told
    assert told.count("Y1 series, 18 V DC") == 2


def test_no_name_is_dropped() -> None:
    """A name of 63 letters stands whole, in lines: in a supply's box, and in a unit's."""
    long = "-".join(["abcdefgh"] * 7)
    barrel = "connector barrel 5.5 x 2.1 mm"
    text = block("supply", f"s{long}", barrel, "outlet o1 9 V dc 100 mA isolated")
    text += block("unit", f"u{long}", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 20 mA")
    (page,) = drawn(results_of(f"{text}power {{\n  u{long} from s{long}.o1\n}}\n"))
    told = "".join(texts((page,)))
    assert f"s{long}" in told
    assert f"u{long}" in told
    assert drawing_faults(page) == ()


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
    """12 + 60 + 8 + 60 + 12 = 152 mm."""
    (drawing,) = drawn(supplied("outlet o1..o8 9 V dc 100 mA isolated", 2))
    assert drawing.height_mm == 152


def test_a_supply_that_no_page_holds_goes_on_on_the_next() -> None:
    """40 outlets: 131 mm / 7.5 = 17 rows on a page, so 17 + 17 + 6; the six below need 6 rows and more than their text."""
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
    assert all(each.height_mm <= 155 and drawing_faults(each) == () for each in drawings)


def test_a_common_that_is_cut_is_told() -> None:
    drawings = drawn(supplied("outlet o1..o20 9 V dc 100 mA common left"))
    assert [texts((each,)).count("goes on: left") for each in drawings] == [1, 1]
