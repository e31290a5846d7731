"""Currents and fields -> the voltage that they induce in a loop. SI units throughout."""

from __future__ import annotations

from math import log, pi

MU_0 = 4e-7 * pi
"""H/m, as the quoted formulas use it; the measured value differs by less than one in a thousand million."""


def uniform_field_volts(hertz: float, tesla: float, area_m2: float) -> float:
    """V = 2πfBA: the voltage in a flat loop whose face stands square to the field, the worst case."""
    return 2 * pi * hertz * tesla * area_m2


def wire_to_loop_henry(length_m: float, near_m: float, far_m: float) -> float:
    """The mutual inductance of a long wire and a flat loop beside it, whose sides lie `near_m` and `far_m` from the wire.

    M = (μ₀l/2π)·ln(r₂/r₁) (MIL-HDBK-419A vol. 1, eqs. 61 to 65). Distances must be above 0.
    """
    return MU_0 * length_m / (2 * pi) * log(far_m / near_m)


def pair_to_loop_henry(length_m: float, near_m: float, far_m: float, spacing_m: float) -> float:
    """The same from a go-and-return pair, whose second wire lies `spacing_m` behind the first: what is left of both."""
    back = wire_to_loop_henry(length_m, near_m + spacing_m, far_m + spacing_m)
    return wire_to_loop_henry(length_m, near_m, far_m) - back


def coupled_volts(hertz: float, henry: float, amperes: float) -> float:
    """V = 2πf·M·I, all effective values."""
    return 2 * pi * hertz * henry * amperes
