"""The classes of leads -> how each is drawn: pattern and letter say it, colour repeats it."""

from __future__ import annotations

from rigc.record import Record
from rigc.reports.shapes import THICK, THIN, Label, Line, Shape


class Style(Record):
    """Colour, pattern and width of a class of leads, and its name."""

    colour: str
    pattern: str
    width_mm: float
    words: str


STYLES = {
    "audio": Style("black", "solid", THICK, "audio lead"),
    "dc": Style("vermillion", "dashed", THICK, "DC lead"),
    "midi": Style("blue", "dotted", THICK, "MIDI lead"),
    "control": Style("green", "dash-dot", THICK, "control lead"),
    "usb": Style("green", "dotted", THIN, "USB lead"),
    "ac": Style("purple", "dash-dot", THICK, "AC lead, low voltage"),
    "mains": Style("purple", "dashed", THIN, "mains lead"),
}


def style_legend(classes: tuple[str, ...], x: float, y: float) -> tuple[Shape, ...]:
    """A sample of each class with its words, one below the other, from (x, y) on; 4.5 mm each."""
    shapes: list[Shape] = []
    for at, signal in enumerate(classes):
        style, height = STYLES[signal], y + 4.5 * at
        shapes.append(Line(x, height, x + 12, height, style.colour, style.pattern, style.width_mm))
        shapes.append(Label(x + 14, height, style.words, level="middle"))
    return tuple(shapes)
