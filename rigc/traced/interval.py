"""Interval: the least and the most that a number may be, and plain arithmetic on such pairs. None where there is no bound.

Each result holds all that the operation can give for numbers within its operands; a bound may be infinite.
"""

from __future__ import annotations

from math import inf, isnan

Interval = tuple[float, float]

NOTHING: Interval = (0.0, 0.0)
ONE: Interval = (1.0, 1.0)
BETWEEN: Interval = (0.0, 1.0)
RISING: Interval = (0.0, inf)
FALLING: Interval = (-inf, 0.0)


def added(one: Interval, other: Interval) -> Interval:
    """One and another."""
    return _bounds(one[0] + other[0], one[1] + other[1])


def lessened(one: Interval, other: Interval) -> Interval:
    """One less another."""
    return _bounds(one[0] - other[1], one[1] - other[0])


def multiplied(one: Interval, other: Interval) -> Interval:
    """One times another; nothing times whatever there is stays nothing."""
    ends = [a * b if a and b else 0.0 for a in one for b in other]
    return min(ends), max(ends)


def divided(one: Interval, other: Interval) -> Interval | None:
    """One by another; None where that may be 0."""
    if other[0] <= 0 <= other[1]:
        return None
    ends = [a / b for a in one for b in other]
    return None if any(map(isnan, ends)) else (min(ends), max(ends))


def negative(one: Interval) -> Interval:
    """Nothing less it."""
    return -one[1], -one[0]


def hull(one: Interval, other: Interval) -> Interval:
    """The least that holds both."""
    return min(one[0], other[0]), max(one[1], other[1])


def _bounds(least: float, most: float) -> Interval:
    """Infinite where two infinities are in each other's way."""
    return -inf if isnan(least) else least, inf if isnan(most) else most
