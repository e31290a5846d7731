"""Paths that join again, some of them late or turned over -> the nulls, and what is lost at a frequency.

Physics: the sum of a path and its copy, g times as strong and later by tau, is |1 + g exp(-j phi)| with phi = 2 pi f tau;
a copy that is turned over counts with -g.
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Collection, Iterable
from math import pi

from rigc.analysis.signal.decibels import decibels
from rigc.record import Record


class Way(Record):
    """A way with its share (any unit, equal for all), how late it is in ms, and whether it arrives turned over."""

    share: float
    late_ms: float
    inverted: bool = False


def nulls_hz(apart_ms: float, inverted: bool, count: int = 3) -> tuple[float, ...]:
    """The lowest frequencies at which the two cancel: (2k + 1) / (2 tau), or k / tau (k > 0) where one is turned over.

    Nothing where they are not apart. With one turned over there is always one more at 0 Hz, which is not counted.
    """
    if apart_ms <= 0:
        return ()
    second = 1000 / apart_ms
    return tuple((k + 1 if inverted else k + 0.5) * second for k in range(count))


def summed(hertz: float, ways: Iterable[Way]) -> float:
    """The sum at that frequency, as a ratio of voltages to a way of share 1."""
    return abs(
        sum((-1 if way.inverted else 1) * way.share * exp(-2j * pi * hertz * way.late_ms / 1000) for way in ways)
    )


def loss_db(hertz: float, ways: Collection[Way]) -> float:
    """What is lost at that frequency against the ways in step, in dB (0 or negative; minus infinity: all of it)."""
    left = summed(hertz, ways) / sum(way.share for way in ways)
    return decibels(left if left > 1e-12 else 0)


def null_depth_db(share: float) -> float:
    """How deep a null is against the first path alone, in dB: 20 log10 |1 - g|; minus infinity at equal shares."""
    return decibels(abs(1 - share))
