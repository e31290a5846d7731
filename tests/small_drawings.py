"""Invented drawings that the tests of the output share: a signal path, a deck, a plot."""

from __future__ import annotations

from math import log10

from rigc.reports.content import Drawing
from rigc.reports.drawings.plot import Curve, Mark, plot
from rigc.reports.drawings.plots.axis import Axis
from rigc.reports.drawings.shapes import THICK, Box, Circle, Label, Line, Polygon, Polyline, Shape
from rigc.reports.symbols import class_ii, earth


def unit(x: float, y: float, name: str, what: str, fill: str = "white") -> tuple[Shape, ...]:
    """A unit of a signal drawing: 26 x 14 mm."""
    return (
        Box(x, y, 26, 14, width_mm=THICK, fill=fill),
        Label(x + 13, y + 4.5, name, anchor="middle", level="middle", strong=True),
        Label(x + 13, y + 9.5, what, anchor="middle", level="middle"),
    )


def lead(x1: float, x2: float, y: float, mark: str) -> tuple[Shape, ...]:
    """A lead between two units, its mark above it."""
    return (
        Line(x1, y, x2, y, width_mm=THICK, arrow="end"),
        Label((x1 + x2) / 2, y - 1.5, mark, anchor="middle"),
    )


SIGNAL = Drawing(
    "signal",
    "Signal path, everything on (invented)",
    "From right to left: guitar, lead A01, fuzz, lead A02, a buffer in its box, lead A03, amplifier.",
    180,
    62,
    (
        Label(2, 4.5, "runs from right to left, as the units stand on the deck"),
        *unit(150, 14, "guitar", "7.8 kohm"),
        *unit(101, 14, "fuzz", "true bypass"),
        *unit(52, 14, "buffer", "1 Mohm in", "tint"),
        *unit(3, 14, "amplifier", "1 Mohm in"),
        *lead(150, 127, 21, "A01"),
        *lead(101, 78, 21, "A02"),
        *lead(52, 29, 21, "A03"),
        Polyline(((65, 46), (65, 37), (114, 37), (114, 28)), "vermillion", "dashed", arrow="end"),
        Line(65, 37, 65, 28, "vermillion", "dashed", arrow="end"),
        Circle(65, 37, 0.7, "vermillion", fill="solid"),
        Label(90, 36, "D01, 9 V", anchor="middle"),
        Box(52, 46, 26, 12, fill="hatch"),
        Label(65, 52, "supply", anchor="middle", level="middle", strong=True, halo=True),
        class_ii(84, 52),
        earth(16, 33),
        Line(16, 28, 16, 31, width_mm=THICK),
        Label(12, 39.5, "one earth, at the amplifier", level="middle"),
    ),
)

DECK = Drawing(
    "deck",
    "Deck, seen from above (invented)",
    "A deck of 500 x 250 mm with two units, a hole and a bar under it.",
    120,
    62,
    (
        Box(10, 6, 100, 50, width_mm=THICK, corner_mm=1),
        Box(18, 24, 14, 24, fill="tint"),
        Label(25, 36, "fuzz", anchor="middle", level="middle", rotation=-90, strong=True),
        Box(45, 24, 24, 24, fill="hatch", pattern="dashed"),
        Label(57, 36, "supply below", anchor="middle", level="middle", halo=True),
        Circle(90, 36, 5, fill="cross-hatch"),
        Polygon(((80, 12), (100, 12), (90, 20)), fill="hatch", colour="blue"),
        Line(10, 3, 110, 3, arrow="both"),
        Label(60, 3, "500", anchor="middle", level="middle", halo=True),
    ),
    scale=5,
)


def response(resonance: float, peak: float) -> tuple[tuple[float, float], ...]:
    """A made-up response with a peak: dB over Hz."""
    steps = [20 * 10 ** (at / 60) for at in range(181)]
    q = 10 ** (peak / 20)
    return tuple(
        (hertz, -10 * log10((1 - (hertz / resonance) ** 2) ** 2 + (hertz / resonance / q) ** 2)) for hertz in steps
    )


CURVES = (
    Curve("plain lead, 3 m", response(4800, 6)),
    Curve("all off", response(3300, 4.2)),
    Curve("fuzz alone", response(3900, 2)),
    Curve("everything on", response(9000, -1)),
    Curve("loop 2", response(8200, -3)),
)

RESPONSE = Drawing(
    "response",
    "Response at the first buffer (invented)",
    "Level over frequency in five states; the peak moves from 4.8 kHz down to 3.3 kHz when all units are off.",
    180,
    95,
    plot(
        Axis("frequency", "Hz", 20, 20_000, log=True),
        Axis("level", "dB", -30, 12),
        CURVES,
        180,
        95,
        marks=(Mark(4700, 6.1, "4.7 kHz, +6.1 dB"),),
    ),
    caption="The curves end at 20 kHz; ranges of hearing and of the loudspeaker are narrower.",
)
