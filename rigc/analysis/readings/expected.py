"""An expected reading -> what a reading at that point must keep to."""

from __future__ import annotations

from rigc.analysis.readings.limit import Limit, bounds
from rigc.analysis.readings.nominal import Nominal
from rigc.facts import readings
from rigc.model.records import Expected

AT_MOST = frozenset((1, 3, 7, 10, 12, 13, 15, 19))
AT_LEAST = frozenset((2, 4, 8, 14))


def expected_limit(expected: Expected, nominal: Nominal | None) -> Limit:
    """Tests that only have a most or a least take the expected value for it; the others get a band around it.

    Test 5: the band that the rule has around the nominal voltage. Test 6: 95 % of it. Levels: 0.5 dB, a bypassed unit's
    too. All else: 5 % either way.
    """
    value, unit = in_decibels(expected.reading.value, expected.unit, expected.test)
    behind = f", expected {expected.reading.typed}"
    if expected.test in AT_MOST:
        return bounds(unit, high=value, either_way=expected.test == 10, behind=behind)
    if expected.test in AT_LEAST:
        return bounds(unit, low=value, either_way=expected.test == 14, behind=behind)
    if expected.test == 6:
        return bounds(unit, low=readings.ON_LOAD_PCT.value / 100 * value, behind=behind)
    if unit in ("dB", "dBu"):
        return bounds(unit, value - readings.THROUGH_DB.value, value + readings.THROUGH_DB.value, behind=behind)
    down, up = _shares(nominal) if expected.test == 5 else _shares(None)
    ends = sorted((value * down, value * up))
    return bounds(unit, ends[0], ends[1], behind=behind)


def in_decibels(value: float, unit: str, test: int) -> tuple[float, str]:
    """A level that is read in dBu, as a change against the test tone, for the tests that send it."""
    if unit == "dBu" and test in (9, 11, 13):
        return value - readings.TEST_TONE_DBU.value, "dB"
    return value, unit


def _shares(nominal: Nominal | None) -> tuple[float, float]:
    if nominal is not None and nominal.volts in readings.OFF_LOAD_LOW_V:
        volts = round(nominal.volts)
        return readings.OFF_LOAD_LOW_V[volts].value / volts, readings.OFF_LOAD_HIGH_V[volts].value / volts
    share = readings.EXPECTED_PCT.value / 100
    return 1 - share, 1 + share
