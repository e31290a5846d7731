"""Levels and pads, worked by hand; each test names what it rests on."""

from __future__ import annotations

import pytest

from rigc.analysis.signal.decibels import dbu, decibels, pad_ratio, ratio, volts


@pytest.mark.parametrize(
    ("level_dbu", "voltage"),
    [
        (0, 0.774597),  # 1 mW in 600 ohm: sqrt(0.6) V; the term 0 dBu: IEC 60268-2, its number from memory
        (4, 1.22765),  # professional nominal level: practice, textbooks
    ],
)
def test_levels_as_voltages(level_dbu: float, voltage: float) -> None:
    assert volts(level_dbu) == pytest.approx(voltage, rel=1e-5)
    assert dbu(voltage) == pytest.approx(level_dbu, abs=1e-4)


def test_consumer_level() -> None:
    # -10 dBV = 0.316228 V = -7.78151 dBu, 11.78151 dB below +4 dBu. Source: textbooks; 0 dBV is 1 V by definition.
    level_dbu = -10 + dbu(1.0)
    assert level_dbu == pytest.approx(-7.78151, abs=1e-5)
    assert volts(level_dbu) == pytest.approx(0.316228, rel=1e-5)
    assert 4 - level_dbu == pytest.approx(11.78151, abs=1e-5)


def test_instrument_level() -> None:
    # -20 dBu is 77.46 mV. Common practice, no source, for the level; sqrt(0.6) / 10 V by arithmetic.
    assert volts(-20) == pytest.approx(0.0774597, rel=1e-6)


@pytest.mark.parametrize(
    ("series", "shunt", "loss"),
    [
        (8_000, 2_000, 13.9794),  # 20 log10(10 / 2) = 20 x 0.698970
        (1_000, 1_000, 6.0206),  # a half
        (0, 1_000, 0),
    ],
)
def test_pads(series: float, shunt: float, loss: float) -> None:
    # Voltage divider: textbook.
    assert decibels((series + shunt) / shunt) == pytest.approx(loss, abs=1e-4)
    assert pad_ratio(loss) * shunt == pytest.approx(series, rel=1e-4)


def test_nothing_left_is_minus_infinity() -> None:
    assert decibels(0) == float("-inf")
    assert ratio(decibels(0.25)) == pytest.approx(0.25)
