"""Induced voltages against values that others computed or printed; each names its source."""

from __future__ import annotations

from math import pi

import pytest

from rigc.analysis.ground.induction import coupled_volts, pair_to_loop_henry, uniform_field_volts, wire_to_loop_henry


@pytest.mark.parametrize(
    ("length_m", "near_m", "far_m", "nanohenry", "amperes", "hertz", "microvolt"),
    [
        # flux = (μ₀il/2π)·ln(r₂/r₁): MIL-HDBK-419A vol. 1, eqs. 61 to 65; the figures are computed apart from this program.
        (0.3, 0.010, 0.013, 15.7419, 1.0, 50.0, 4.94545),
        (0.5, 0.020, 0.030, 40.5465, 0.1, 60.0, 1.52857),
    ],
)
def test_wire_beside_a_loop(
    length_m: float, near_m: float, far_m: float, nanohenry: float, amperes: float, hertz: float, microvolt: float
) -> None:
    mutual = wire_to_loop_henry(length_m, near_m, far_m)
    assert mutual * 1e9 == pytest.approx(nanohenry, rel=1e-5)
    assert coupled_volts(hertz, mutual, amperes) * 1e6 == pytest.approx(microvolt, rel=1e-5)


def test_pair_beside_a_loop() -> None:
    # Both 3 mm wide, 50 mm apart, 0.3 m: 0.216390 nH computed apart; as dipoles μ₀·l·s·v/(2π·d²) = 0.216 nH.
    mutual = pair_to_loop_henry(0.3, 0.050, 0.053, 0.003) * 1e9
    dipoles = 4e-7 * pi * 0.3 * 0.003 * 0.003 / (2 * pi * 0.050**2) * 1e9
    assert dipoles == pytest.approx(0.216, rel=1e-3)
    assert abs(mutual) == pytest.approx(dipoles, rel=0.15)  # pairs side by side, from inner wire to inner wire
    between_middles = pair_to_loop_henry(0.3, 0.047, 0.050, 0.003) * 1e9
    assert abs(between_middles) == pytest.approx(0.216390, rel=1e-5)


def test_loop_in_a_uniform_field() -> None:
    # V = 2πfBA: H. W. Ott, Electromagnetic Compatibility Engineering, ch. 2 (page from memory); 1 µT, 50 Hz, 0.01 m² give π µV.
    assert uniform_field_volts(50, 1e-6, 0.01) * 1e6 == pytest.approx(3.14159, rel=1e-5)


def test_loop_of_the_home_rig() -> None:
    # By hand: 2π · 50 · 1e-6 · 0.051 = 16.0 µV.
    assert uniform_field_volts(50, 1e-6, 0.051) * 1e6 == pytest.approx(16.0, rel=2e-3)
