"""A part and a whole -> the share in percent as it is written."""

from __future__ import annotations


def percentage(part: float, whole: float) -> str:
    """`51.3 %`: one decimal, none where it is 0; empty where the whole is nothing."""
    if whole <= 0:
        return ""
    return f"{part / whole * 100:.1f}".removesuffix(".0") + " %"
