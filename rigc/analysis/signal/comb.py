"""Two paths that join again, one of them late or turned over -> the nulls, and what is lost at a frequency.

Physics: the sum of a path and its copy, g times as strong and later by tau, is |1 + g exp(-j phi)| with phi = 2 pi f tau;
a copy that is turned over counts with -g.
"""

from __future__ import annotations

from cmath import exp
from math import pi

from rigc.analysis.signal.decibels import decibels


def nulls_hz(apart_ms: float, inverted: bool, count: int = 3) -> tuple[float, ...]:
    """The lowest frequencies at which the two cancel: (2k + 1) / (2 tau), or k / tau (k > 0) where one is turned over.

    None where they are not apart. With one turned over there is always one more at 0 Hz, which is not counted.
    """
    if apart_ms <= 0:
        return ()
    second = 1000 / apart_ms
    return tuple((k + 1 if inverted else k + 0.5) * second for k in range(count))


def summed(hertz: float, apart_ms: float, share: float, inverted: bool) -> float:
    """The sum relative to the first path alone, as a ratio of voltages; `share` is g."""
    turned = -share if inverted else share
    return abs(1 + turned * exp(-2j * pi * hertz * apart_ms / 1000))


def loss_db(hertz: float, apart_ms: float, share: float, inverted: bool) -> float:
    """What is lost at that frequency against the two paths in step, in dB (0 or negative; minus infinity: all of it)."""
    left = summed(hertz, apart_ms, share, inverted) / (1 + share)
    return decibels(left if left > 1e-12 else 0)


def null_depth_db(share: float) -> float:
    """How deep a null is against the first path alone, in dB: 20 log10 |1 - g|; minus infinity at equal shares."""
    return decibels(abs(1 - share))
