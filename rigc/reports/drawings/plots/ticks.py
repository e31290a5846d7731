"""A range of values -> where its axis is marked, and what is written there."""

from __future__ import annotations

from math import ceil, floor, log10


def linear_ticks(low: float, high: float, most: int) -> tuple[float, ...]:
    """Multiples of 1, 2 or 5 times a power of ten within the range, at most about `most` of them (two at least)."""
    rough = (high - low) / max(most, 2)
    power = 10.0 ** floor(log10(rough))
    step = next(power * part for part in (1, 2, 5, 10) if power * part >= rough * 0.999)
    return tuple(round(step * at, 9) for at in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1))


def decade_ticks(low: float, high: float, parts: tuple[int, ...]) -> tuple[float, ...]:
    """These parts (1 to 9) of every decade within the range; `low` must be above 0."""
    decades = range(floor(log10(low)), ceil(log10(high)) + 1)
    values = (part * 10.0**decade for decade in decades for part in parts)
    return tuple(round(value, 9) for value in values if low * 0.999 <= value <= high * 1.001)


def tick_text(value: float) -> str:
    """A short number: thousands as `k`, millions as `M`, at most two decimals, a true minus sign."""
    size = abs(value)
    divisor, letter = (1e6, "M") if size >= 1e6 else (1e3, "k") if size >= 1e3 else (1.0, "")
    text = f"{size / divisor:.2f}".rstrip("0").rstrip(".")
    return f"{'−' if value < 0 and text != '0' else ''}{text}{letter}"
