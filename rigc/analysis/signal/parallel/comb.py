"""Ways that join again, some of them late or turned over -> the notches of their sum, and what is lost at a frequency.

Physics: ways with the shares g, late by tau, sum to |Σ ±g exp(-j 2 pi f tau)|, with a minus for a way that is turned over.
Two ways have their notches at (2k + 1) / (2 tau), or at k / tau where one is turned over; of three and more they have to be
looked for.
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Collection, Iterable
from itertools import combinations
from math import pi, sin

from rigc.analysis.signal.decibels import decibels
from rigc.record import Record

HIGHEST_HZ = 20_000.0
"""The upper end of hearing: what lies above is not looked for."""

_STEPS = 64
"""Steps in one turn of the fastest of the beats of which the sum is made: no dip is stepped over."""


class Way(Record):
    """A way with its share (any unit, equal for all), how late it is in ms, and whether it arrives turned over."""

    share: float
    late_ms: float
    inverted: bool = False

    @property
    def signed(self) -> float:
        """Its share, negative where it is turned over."""
        return -self.share if self.inverted else self.share


class Notch(Record):
    """A frequency in Hz at which the sum is least, and what is lost there against the ways in step, in dB (0 or negative)."""

    hertz: float
    loss_db: float


def notches(ways: Collection[Way], count: int = 3) -> tuple[Notch, ...]:
    """The lowest of them within hearing, at most `count`. What is lost towards 0 Hz, where ways are turned over, is none."""
    beats = [
        (one.signed * other.signed * apart, apart)
        for one, other in combinations(ways, 2)
        if (apart := abs(one.late_ms - other.late_ms) / 1000) > 0
    ]
    if not beats:
        return ()
    step = 1 / (_STEPS * max(apart for _, apart in beats))
    found: list[Notch] = []
    low, rising = step / 2, _slope(beats, step / 2) > 0
    while low < HIGHEST_HZ and len(found) < count:
        high = low + step
        was, rising = rising, _slope(beats, high) > 0
        if rising and not was and (least := _turn(beats, low, high)) < HIGHEST_HZ:
            found.append(Notch(least, loss_db(least, ways)))
        low = high
    return tuple(found)


def summed(hertz: float, ways: Iterable[Way]) -> float:
    """The sum at that frequency, as a ratio of voltages to a way of share 1."""
    return abs(sum(way.signed * exp(-2j * pi * hertz * way.late_ms / 1000) for way in ways))


def loss_db(hertz: float, ways: Collection[Way]) -> float:
    """What is lost at that frequency against the ways in step, in dB (0 or negative; minus infinity: all of it)."""
    left = summed(hertz, ways) / sum(way.share for way in ways)
    return decibels(left if left > 1e-9 else 0)


def _slope(beats: Iterable[tuple[float, float]], hertz: float) -> float:
    """The sign of this is that of the slope of |sum|²: -Σ g g' tau sin(2 pi f tau) over all pairs of ways."""
    return -sum(weight * sin(2 * pi * hertz * apart) for weight, apart in beats)


def _turn(beats: Iterable[tuple[float, float]], low: float, high: float) -> float:
    """Where the slope turns from falling to rising between two frequencies, halved until nothing is left to halve."""
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if _slope(beats, middle) > 0 else (middle, high)
    return (low + high) / 2
