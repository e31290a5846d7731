"""Nulls and sums of paths that meet again: physics, worked by hand from |1 + g exp(-j phi)|."""

from __future__ import annotations

from math import cos, pi, sin

import pytest

from rigc.analysis.signal.parallel.comb import HIGHEST_HZ, Way, loss_db, notches, summed
from rigc.facts.paths import LOWEST_NOTE_HZ


def hertz(*ways: Way) -> tuple[float, ...]:
    return tuple(each.hertz for each in notches(ways))


def test_notches_of_three_milliseconds() -> None:
    # (2k + 1) / (2 x 0.003 s): 166.67, 500, 833.33 Hz.
    assert hertz(Way(1, 0), Way(1, 3)) == pytest.approx((166.6667, 500, 833.3333), rel=1e-6)


def test_notches_of_a_path_turned_over() -> None:
    # k / 0.003 s, the one at 0 Hz left out: 333.33, 666.67, 1000 Hz.
    assert hertz(Way(1, 0), Way(1, 3, True)) == pytest.approx((333.3333, 666.6667, 1000), rel=1e-6)


@pytest.mark.parametrize("inverted", [False, True])
def test_the_sum_is_nothing_at_each_notch_of_equal_ways(inverted: bool) -> None:
    found = notches((Way(1, 0), Way(1, 3, inverted)), count=5)
    assert len(found) == 5
    for each in found:
        assert summed(each.hertz, (Way(1, 0), Way(1, 3, inverted))) == pytest.approx(0, abs=1e-12)
        assert each.loss_db == float("-inf")


def test_depth_of_a_notch() -> None:
    # 0.7 - 0.3 of 0.7 + 0.3 are left: 20 log10 0.4 = -7.9588 dB.
    assert notches((Way(70, 0), Way(30, 3)))[0].loss_db == pytest.approx(-7.9588, abs=1e-4)


def test_three_ways_are_summed_as_complex_numbers() -> None:
    # 0.4 + 0.3 exp(-j w 2.0 ms) + 0.3 exp(-j w 3.1 ms), looked at every 0.1 Hz with cosines and sines, written out by hand:
    # least at 197.9 Hz (-23.57 dB), 470.1 (-8.16), 782.0 (-16.83). The largest difference alone, 3.1 ms, would say 161.3.
    three = (Way(40, 0), Way(30, 2), Way(30, 3.1))
    found = notches(three)
    assert [each.hertz for each in found] == pytest.approx([197.9, 470.1, 782.0], abs=0.06)
    assert [each.loss_db for each in found] == pytest.approx([-23.57, -8.16, -16.83], abs=0.01)
    # At 197.9 Hz by hand: 2 ms are 2.48688 rad, 3.1 ms are 3.85467 rad; 0.4 + 0.3 (-0.79323 - 0.75635) = -0.06487 real,
    # -0.3 (0.60893 - 0.65417) = 0.01357 imaginary: 0.06628, 20 log10 = -23.57 dB.
    assert summed(197.9, three) / 100 == pytest.approx(0.06628, abs=2e-5)


def test_a_scan_of_the_sum_finds_the_same_minima() -> None:
    ways = (Way(50, 0), Way(20, 1.3, True), Way(30, 4.7))
    scan = [
        abs(
            50
            - 20 * complex(cos(2 * pi * f * 0.0013), -sin(2 * pi * f * 0.0013))
            + 30 * complex(cos(2 * pi * f * 0.0047), -sin(2 * pi * f * 0.0047))
        )
        for f in range(1, 1500)
    ]
    least = [at + 1 for at in range(1, len(scan) - 1) if scan[at - 1] > scan[at] <= scan[at + 1]][:3]
    assert hertz(*ways) == pytest.approx(least, abs=1)


def test_nothing_is_apart() -> None:
    assert notches((Way(1, 0), Way(1, 0))) == notches((Way(1, 2),)) == ()


def test_beyond_hearing_is_not_looked_for() -> None:
    # Half of 1 / 0.02 ms is 25 kHz; of 0.1 ms 5 kHz, 15 kHz, and 25 kHz no more.
    assert hertz(Way(1, 0), Way(1, 0.02)) == ()
    assert hertz(Way(1, 0), Way(1, 0.1)) == pytest.approx((5000, 15000)) and HIGHEST_HZ == 20000


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
