"""The classes of leads -> how each is drawn: pattern and letter say it, colour and width repeat it."""

from __future__ import annotations

from rigc.record import Record
from rigc.reports.drawings.shapes import THICK, THIN


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
    "usb": Style("green", "dash-dot-dot", THIN, "USB lead"),
    "ac": Style("purple", "long-dash", THICK, "AC lead, low voltage"),
    "mains": Style("purple", "dash-dash-dot", THIN, "mains lead"),
}
