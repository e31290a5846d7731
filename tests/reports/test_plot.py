"""Plots: ticks that can be read, curves cut at the frame, names that do not overlap."""

from __future__ import annotations

from itertools import pairwise

import pytest

from rigc.reports.drawings.plot import STYLES, Curve, Mark, plot
from rigc.reports.drawings.plots.axis import Axis
from rigc.reports.drawings.plots.clipping import Frame, clipped
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.plots.ticks import decade_ticks, linear_ticks, tick_text
from rigc.reports.drawings.shapes import Box, Label, Line, Polyline

HERTZ = Axis("frequency", "Hz", 20, 20_000, log=True)
DECIBEL = Axis("level", "dB", -30, 10)
FRAME = Frame(0, 0, 10, 10)


@pytest.mark.parametrize(
    ("low", "high", "most", "ticks"),
    [
        (-30, 10, 8, (-30, -25, -20, -15, -10, -5, 0, 5, 10)),
        (0, 1, 4, (0, 0.5, 1)),
        (0.1, 0.37, 6, (0.1, 0.15, 0.2, 0.25, 0.3, 0.35)),
        (-3, 12, 5, (0, 5, 10)),
    ],
)
def test_linear_ticks_are_round(low: float, high: float, most: int, ticks: tuple[float, ...]) -> None:
    assert linear_ticks(low, high, most) == ticks


def test_decade_ticks() -> None:
    assert decade_ticks(20, 20_000, (1, 2, 5)) == (20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000)
    assert decade_ticks(0.5, 3, (1, 2, 5)) == (0.5, 1, 2)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (20, "20"),
        (1500, "1.5k"),
        (20_000, "20k"),
        (2.2e6, "2.2M"),
        (-30, "−30"),
        (0, "0"),
        (-0.001, "0"),
        (0.125, "0.12"),
    ],
)
def test_tick_texts(value: float, text: str) -> None:
    assert tick_text(value) == text


def test_an_axis_gives_a_number_only_where_there_is_room() -> None:
    assert HERTZ.major(150) == decade_ticks(20, 20_000, (1, 2, 5))
    assert HERTZ.major(60) == decade_ticks(20, 20_000, (1, 3))
    assert HERTZ.major(20) == (100, 1000, 10_000)
    assert DECIBEL.major(80, upright=True) == (-30, -25, -20, -15, -10, -5, 0, 5, 10)
    assert DECIBEL.replace(step=20.0).major(80, upright=True) == (-20, 0)


def test_a_log_axis_gives_each_octave_the_same_length() -> None:
    assert HERTZ.part(20) == 0
    assert HERTZ.part(20_000) == pytest.approx(1)
    assert HERTZ.part(80) - HERTZ.part(40) == pytest.approx(HERTZ.part(8000) - HERTZ.part(4000))


@pytest.mark.parametrize(
    ("points", "runs"),
    [
        (((-5.0, 5.0), (5.0, 5.0)), (((0.0, 5.0), (5.0, 5.0)),)),
        (((2.0, 2.0), (4.0, 4.0), (4.0, 20.0)), (((2.0, 2.0), (4.0, 4.0), (4.0, 10.0)),)),
        (((0.0, -10.0), (5.0, 10.0), (10.0, -10.0)), (((2.5, 0.0), (5.0, 10.0), (7.5, 0.0)),)),
        (((2.0, 5.0), (2.0, 15.0), (8.0, 15.0), (8.0, 5.0)), (((2.0, 5.0), (2.0, 10.0)), ((8.0, 10.0), (8.0, 5.0)))),
        (((20.0, 0.0), (20.0, 5.0)), ()),
    ],
)
def test_curves_end_on_the_frame(
    points: tuple[tuple[float, float], ...], runs: tuple[tuple[tuple[float, float], ...], ...]
) -> None:
    assert clipped(points, FRAME) == runs


@pytest.mark.parametrize(
    ("wishes", "heights"),
    [
        ((10.0, 30.0), (10, 30)),
        ((20.0, 20.0), (18, 22)),
        ((22.0, 20.0), (23, 19)),
        ((1.0, 1.0, 7.0), (0, 4, 8)),
        ((50.0, 49.0, 48.0), (50, 46, 42)),
        ((), ()),
    ],
)
def test_labels_are_spread_as_little_as_can_be(wishes: tuple[float, ...], heights: tuple[float, ...]) -> None:
    """Worked by hand for labels 4 mm apart between 0 and 50 mm."""
    assert spread(wishes, 4, 0, 50) == heights


def test_a_curve_and_a_mark_stand_where_the_axes_say() -> None:
    shapes = plot(HERTZ, DECIBEL, (Curve("flat", ((20, -10), (20_000, -10))),), 180, 90, (Mark(20_000, 10, "corner"),))
    (frame,) = (shape for shape in shapes if isinstance(shape, Box))
    (curve,) = (shape for shape in shapes if isinstance(shape, Polyline))
    right, middle = frame.x + frame.width, frame.y + frame.height / 2
    assert curve.points[0] == pytest.approx((frame.x, middle))
    assert curve.points[1] == pytest.approx((right, middle))
    (corner,) = (shape for shape in shapes if isinstance(shape, Label) and shape.text == "corner")
    assert corner.x == pytest.approx(right)
    assert corner.y == pytest.approx(frame.y - 2)


def test_every_curve_has_its_name_and_a_sample_of_its_line_beside_it() -> None:
    curves = tuple(Curve(f"curve {at}", ((20, at / 10), (20_000, at / 10))) for at in range(len(STYLES)))
    shapes = plot(HERTZ, DECIBEL, curves, 180, 90)
    names = [shape for shape in shapes if isinstance(shape, Label) and shape.text.startswith("curve")]
    samples = [shape for shape in shapes if isinstance(shape, Line) and shape.x2 + 1.5 == names[0].x]
    assert [name.text for name in names] == [curve.name for curve in curves]
    assert [name.y for name in names] == [sample.y1 for sample in samples]
    assert [(sample.colour, sample.pattern, sample.width_mm) for sample in samples] == list(STYLES)
    heights = sorted(name.y for name in names)
    assert all(lower - upper >= 4 for upper, lower in pairwise(heights))


def test_more_curves_than_can_be_told_apart_are_refused() -> None:
    curves = tuple(Curve(str(at), ((20, 0), (200, 0))) for at in range(len(STYLES) + 1))
    with pytest.raises(ValueError, match="9 curves in one plot; 8 can be told apart"):
        plot(HERTZ, DECIBEL, curves, 180, 90)
