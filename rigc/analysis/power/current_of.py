"""The words for the current that a unit draws, alike in every finding that asks for it or wants it."""

from __future__ import annotations


def current_of(unit: str) -> str:
    """`the current that 'tern' draws`."""
    return f"the current that '{unit}' draws"
