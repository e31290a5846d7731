"""Nulls and sums of paths that meet again: physics, worked by hand from |1 + g exp(-j phi)|."""

from __future__ import annotations

from math import cos, pi, sin

import pytest

from rigc.analysis.signal.comb import Way, loss_db, null_depth_db, nulls_hz, summed
from rigc.facts.paths import LOWEST_NOTE_HZ


def test_nulls_of_three_milliseconds() -> None:
    # (2k + 1) / (2 x 0.003 s): 166.67, 500, 833.33 Hz.
    assert nulls_hz(3, inverted=False) == pytest.approx((166.6667, 500, 833.3333), rel=1e-6)


def test_nulls_of_a_path_turned_over() -> None:
    # k / 0.003 s, the one at 0 Hz left out: 333.33, 666.67, 1000 Hz.
    assert nulls_hz(3, inverted=True) == pytest.approx((333.3333, 666.6667, 1000), rel=1e-6)


@pytest.mark.parametrize("inverted", [False, True])
def test_the_sum_is_nothing_at_each_null(inverted: bool) -> None:
    for hertz in nulls_hz(3, inverted, count=5):
        assert summed(hertz, (Way(1, 0), Way(1, 3, inverted))) == pytest.approx(0, abs=1e-12)


def test_nothing_is_apart() -> None:
    assert nulls_hz(0, inverted=False) == ()


def test_the_lowest_note() -> None:
    # Equal temperament, 29 semitones below A = 440 Hz (ISO 16, from memory): 440 / 2^(29/12) = 82.4069 Hz.
    assert pytest.approx(82.4069, abs=1e-4) == LOWEST_NOTE_HZ.value


def test_loss_of_equal_ways() -> None:
    # phi = 2 pi x 82.4069 x 0.003 = 1.553333; |1 + e^-j phi| / 2 = cos(phi / 2), turned over sin(phi / 2).
    phi = 2 * pi * 82.4069 * 0.003
    straight, turned = (loss_db(82.4069, (Way(1, 0), Way(1, 3, over))) for over in (False, True))
    assert 10 ** (straight / 20) == pytest.approx(cos(phi / 2), rel=1e-9)
    assert 10 ** (turned / 20) == pytest.approx(sin(phi / 2), rel=1e-9)
    assert (straight, turned) == pytest.approx((-2.9350, -3.0868), abs=1e-3)


def test_shares_are_weighed() -> None:
    # 0.7 against 0.3 turned over, in step: 0.4 of 1.0 are left, 20 log10 0.4 = -7.9588 dB.
    assert loss_db(82.41, (Way(70, 0), Way(30, 0, True))) == pytest.approx(-7.9588, abs=1e-4)
    # 40 + 30 - 30 of 100: the same.
    assert loss_db(82.41, (Way(40, 0), Way(30, 0), Way(30, 0, True))) == pytest.approx(-7.9588, abs=1e-4)


def test_what_cancels_leaves_nothing() -> None:
    assert loss_db(82.41, (Way(50, 0), Way(50, 0, True))) == float("-inf")


def test_depth_of_a_null() -> None:
    # 20 log10 |1 - 0.5| = -6.0206 dB; at equal shares nothing is left.
    assert null_depth_db(0.5) == pytest.approx(-6.0206, abs=1e-4)
    assert null_depth_db(1) == float("-inf")
