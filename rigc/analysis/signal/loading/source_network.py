"""A passive instrument with its controls, its cable and the inputs on it -> its frequency response.

The circuit, node by node: the pickup's source feeds its resistance and inductance in series to node `p`; there its own
capacitance and the tone control with its capacitor go to ground; the volume control's upper part leads on to node `w`,
and there its lower part, all cable, and every input in parallel go to ground. A volume control is split at its
setting: the share of the track is taken for the share of the resistance, which holds for a linear track; at full up,
and for a tone control at full, every taper is the same. All cable lies at node `w`, all treadles are full up.
"""

from __future__ import annotations

from functools import cached_property, lru_cache
from math import inf, pi, sqrt
from typing import Any

from rigc.record import Record
from rigc.traced.means import decibels
from rigc.traced.term import Unknown

LOW_HZ, HIGH_HZ = 100.0, 20_000.0
TOLD_HZ = (100.0, 1000.0, 5000.0)
_STEPS = 120
FARTHEST_HZ = 1e6
_FINE = 2e-5  # relative; a tenth of what is promised


class SourceNetwork(Record):
    """The parts, in H, ohm and pF. `turned` and `tone_turned` are shares of the track, 1 is full up; `load_ohm` may be inf."""

    henry: float
    ohm: float
    pickup_pf: float
    volume_ohm: float
    turned: float
    tone_ohm: float
    tone_turned: float
    tone_pf: float
    cable_pf: float
    load_ohm: float

    def level(self, hertz: float) -> complex:
        """The voltage at the inputs over that of the source, at a frequency above 0 Hz."""
        s = 2j * pi * hertz
        below, above = self.volume_ohm * self.turned, self.volume_ohm * (1 - self.turned)
        if below == 0:
            return 0j
        at_w = 1 / below + 1 / self.load_ohm + s * self.cable_pf * 1e-12
        tone = self.tone_ohm * self.tone_turned + 1 / (s * self.tone_pf * 1e-12)
        # Node equations: (1/series + at_p + 1/above) p - w/above = source/series; (1/above + at_w) w = p/above.
        at_p = s * self.pickup_pf * 1e-12 + 1 / tone + 1 / (above + 1 / at_w)
        p = 1 / (1 + (self.ohm + s * self.henry) * at_p)
        return p / (1 + above * at_w)

    def decibel(self, hertz: float) -> float:
        """The level in dB; -inf where nothing comes through."""
        return float(decibels(abs(self.level(hertz))))

    @property
    def silent(self) -> bool:
        """Whether nothing comes through: the volume control is all the way down."""
        return self.level(LOW_HZ) == 0

    @cached_property
    def peak_hz(self) -> float | None:
        """Where the response is highest between 100 Hz and 20 kHz; None where it is highest at either end of that."""
        ratio = (HIGH_HZ / LOW_HZ) ** (1 / _STEPS)
        sizes = [abs(self.level(LOW_HZ * ratio**step)) for step in range(_STEPS + 1)]
        top = max(range(len(sizes)), key=sizes.__getitem__)
        if top in (0, _STEPS):
            return None
        low, high = LOW_HZ * ratio ** (top - 1), LOW_HZ * ratio ** (top + 1)
        while high / low - 1 > _FINE:
            third = (high / low) ** (1 / 3)
            if abs(self.level(low * third)) < abs(self.level(high / third)):
                low *= third
            else:
                high /= third
        return sqrt(low * high)

    @cached_property
    def fallen_hz(self) -> float | None:
        """Where the response, behind its peak, has fallen 3 dB (half the power) below 100 Hz; None where it has not up to 1 MHz, or
        nothing comes through."""
        if self.silent:
            return None
        floor = abs(self.level(LOW_HZ)) / sqrt(2)
        low = self.peak_hz or LOW_HZ
        high = low
        while abs(self.level(high)) > floor:
            low, high = high, high * 1.1
            if high > FARTHEST_HZ:
                return None
        while high / low - 1 > _FINE:
            middle = sqrt(low * high)
            low, high = (middle, high) if abs(self.level(middle)) > floor else (low, middle)
        return sqrt(low * high)


@lru_cache(maxsize=1024)
def network(*parts: float) -> SourceNetwork:
    """The network of these parts; one for each set of them, since what is searched in it is searched once."""
    return SourceNetwork(*parts)


def quality(henry: float, ohm: float, across_ohm: float, picofarad: float) -> float:
    """The Q of a pickup's resonance with both controls full up: inductance L in series with R, then C (pickup and cable)
    with P across it (volume, tone and inputs side by side; the tone's capacitor is taken for a short).

    w^2 = (1 + R/P)/(L C), Q = w L C/(L/P + R C). All above 0.
    """
    farad = picofarad * 1e-12
    return sqrt((1 + ohm / across_ohm) * henry * farad) / (henry / across_ohm + ohm * farad)


def unloaded_hz(henry: float, picofarad: float) -> float:
    """The ideal resonance of an inductance with a capacitance, unloaded: 1/(2 pi sqrt(L C)). Both above 0."""
    return 1 / (2 * pi * sqrt(henry * picofarad * 1e-12))


def corner_hz(ohm: float, picofarad: float) -> float:
    """The treble corner of a source impedance with a capacitance across it: 1/(2 pi R C); inf where one of them is 0."""
    return 1 / (2 * pi * ohm * picofarad * 1e-12) if ohm * picofarad else inf


def bridging_db(source_ohm: float | Unknown, load_ohm: float | Unknown) -> Any:
    """What a source loses into a load: 20 log10(Zin/(Zin+Zout)), in dB, at most 0; -inf into 0 ohm. Of plain numbers a plain
    one."""
    if load_ohm == inf:
        return 0.0
    return decibels(load_ohm / (load_ohm + source_ohm)) if load_ohm else -inf
