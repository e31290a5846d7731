"""A number -> the text in which a finding, a sheet or a reason gives it: rounded as on paper, with a real minus sign."""

from __future__ import annotations

from math import copysign


def decimals(value: float, places: int = 1) -> str:
    """`7`, `6.5`, `−20`: halves away from nought, without needless zeros; never `−0`."""
    text = fixed(value, places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def fixed(value: float, places: int = 1) -> str:
    """`7.0`, `−20.5`: halves away from nought, always with that many places; never `−0.0`."""
    text = f"{value + copysign(1e-9, value):.{places}f}"
    return signed(text if text.strip("-0.") else text.lstrip("-"))


def signed(text: str) -> str:
    """A number's text with the real minus sign."""
    return text.replace("-", "−")
