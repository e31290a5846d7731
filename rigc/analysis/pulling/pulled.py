"""Pulled: one line of what stores hand out, and how its figures are written."""

from __future__ import annotations

from rigc.record import Record


class Pulled(Record):
    """So much of an item, and so much more: spares, waste. `unit` is `m`, `sets`, or empty for pieces."""

    item: str
    kind: str
    unit: str
    quantity: float
    spare: float = 0.0


def figure(value: float) -> str:
    """Whole ones without decimals, lengths to a tenth of a millimetre; nothing where there is nothing."""
    return f"{value:.4f}".rstrip("0").rstrip(".") if value else ""
