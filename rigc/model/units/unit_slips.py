"""A unit as people write it -> the unit that was probably meant."""

from __future__ import annotations

from collections.abc import Collection

from rigc.diagnostics.near import nearest

_SHORTHAND = {
    "k": "kohm", "K": "kohm", "M": "Mohm", "Meg": "Mohm", "R": "ohm", "ohms": "ohm",
    "volt": "V", "volts": "V", "amp": "A", "amps": "A", "milliamps": "mA", "watt": "W", "watts": "W",
    "inch": "in", "inches": "in", "feet": "ft", "foot": "ft", "metre": "m", "metres": "m",
    "meter": "m", "meters": "m", "gram": "g", "grams": "g", "gr": "g", "kilo": "kg", "kilos": "kg",
    "lbs": "lb", "pounds": "lb", "n": "nF", "p": "pF", "u": "uF", "hertz": "Hz", "hz": "Hz",
    "henry": "H", "henries": "H", "henrys": "H", "farad": "F", "kilohm": "kohm", "kilohms": "kohm", "kiloohm": "kohm", "megohm": "Mohm", "megohms": "Mohm",
    "milliamp": "mA", "milliampere": "mA", "milliamperes": "mA", "ampere": "A", "amperes": "A", "millivolt": "mV", "ounce": "oz", "ounces": "oz",
    "pound": "lb", "kilogram": "kg", "kilograms": "kg", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "centimetre": "cm",
    "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "millisecond": "ms", "milliseconds": "ms", "msec": "ms", "msecs": "ms", "secs": "s", "second": "s",
    "minutes": "min", "minute": "min", "mins": "min", "hour": "h", "hrs": "h", "hr": "h", "decibel": "dB", "decibels": "dB", "pct": "%", "degree": "deg",
    "nanofarad": "nF", "picofarad": "pF", "microfarad": "uF", "kilohertz": "kHz", "megahertz": "MHz",
    "sec": "s", "seconds": "s", "degrees": "deg", "percent": "%", "hours": "h",
}  # fmt: skip
"""What people write for a unit; common speech, no source."""


def said_for(typed: str) -> str:
    """The unit that people mean by a word; an empty text if it is none of these."""
    return _SHORTHAND.get(typed, "") or (_SHORTHAND.get(typed.lower(), "") if len(typed) > 2 else "")


def meant(typed: str, fits: Collection[str]) -> str:
    """The unit most like what was typed, of those that fit there; an empty text if none is like it."""
    short = said_for(typed)
    return short if short in fits else nearest(typed, fits)
