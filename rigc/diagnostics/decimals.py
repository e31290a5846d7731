"""A number -> the text in which a finding or a sheet gives it: rounded, without needless zeros."""

from __future__ import annotations


def decimals(value: float, places: int = 1) -> str:
    """`7`, `6.5`, `-20`; never `-0`."""
    text = f"{value:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text
