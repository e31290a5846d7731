"""Limit: what a reading keeps to, and whether it does; a stated expected reading makes one."""

from __future__ import annotations

from rigc.analysis.tests.nominal import Nominal
from rigc.diagnostics.decimals import decimals, signed
from rigc.facts import readings
from rigc.model.records import Expected
from rigc.record import Record

_PREFIXED = {"V": ((1e-3, "mV"),), "ohm": ((1e6, "MΩ"), (1e3, "kΩ"), (0.0, "Ω"))}


class Limit(Record):
    """Bounds in `unit`, None where there is none on that side; `strict`: the bound itself is already outside.

    `either_way`: only the size of a reading counts, not its sign. `words` is the limit in a sentence, or why there is
    none, `short` the same for a table's cell.
    """

    words: str
    short: str
    unit: str = ""
    low: float | None = None
    high: float | None = None
    strict: bool = False
    either_way: bool = False

    def passes(self, value: float, unit: str) -> bool | None:
        """Whether a reading keeps to it; None where there are no bounds or the units don't belong together."""
        if unit != self.unit or (self.low is None and self.high is None):
            return None
        size = abs(value) if self.either_way else value
        nearly = 1e-9 * max(1.0, abs(size))  # half a digit lost on the way from the unit as typed is no fault
        if self.strict:
            nearly = -nearly
        low, high = self.low, self.high
        return (low is None or size >= low - nearly) and (high is None or size <= high + nearly)


def bounds(
    unit: str,
    low: float | None = None,
    high: float | None = None,
    *,
    strict: bool = False,
    either_way: bool = False,
    behind: str = "",
) -> Limit:
    """A limit with its words, `behind` put straight behind them."""
    if low is not None and high is not None:
        words = f"{said(low, unit).split()[0] if same_unit(low, high, unit) else said(low, unit)} to {said(high, unit)}"
        short = words
    elif high is not None:
        words, short = (f"{sign} {said(high, unit)}" for sign in (("less than", "<") if strict else ("at most", "≤")))
    else:
        signs = ("more than", ">") if strict else ("at least", "≥")
        words, short = (f"{sign} {said(low or 0.0, unit)}" for sign in signs)
    return Limit(words + behind, short + behind, unit, low, high, strict, either_way)


def unbounded(words: str) -> Limit:
    """That there is no limit, and why."""
    return Limit(words, words)


def said(value: float, unit: str) -> str:
    """A value with the unit in which people read it off (`12 mV`, `20 MΩ`)."""
    scale, shown = _shown(value, unit)
    return f"{decimals(value / scale, 3)} {shown}".strip()


def with_sign(typed: str) -> str:
    """A reading as typed, but with the signs for ohm and minus that the limit beside it bears."""
    return signed(typed.replace("ohm", "Ω"))


def same_unit(one: float, other: float, unit: str) -> bool:
    """Whether two values are told in one unit."""
    return _shown(one, unit) == _shown(other, unit)


def _shown(value: float, unit: str) -> tuple[float, str]:
    size = abs(value)
    if unit == "V" and 0 < size < 0.5:
        return _PREFIXED["V"][0]
    if unit == "ohm":
        return next((scale or 1.0, shown) for scale, shown in _PREFIXED["ohm"] if size >= scale)
    return 1.0, unit


AT_MOST = frozenset((1, 3, 7, 10, 12, 13, 15, 19))
AT_LEAST = frozenset((2, 4, 8, 14))
EITHER_WAY = frozenset((10, 14))


def expected_limit(expected: Expected, nominal: Nominal | None) -> Limit:
    """Tests that only have a most or a least take the expected value for it; the others get a band around it.

    Test 5: the band that the rule has around the nominal voltage. Test 6: 95 % of it, of a negative one on its side of zero.
    Levels: 0.5 dB, a bypassed unit's too; of treble and mute only the size counts, whichever way it is signed. All else: 5 % either way.
    """
    value, unit = in_decibels(expected.reading.value, expected.unit, expected.test)
    behind = f", expected {expected.reading.typed}"
    if expected.test in EITHER_WAY:
        value = abs(value)
    if expected.test in AT_MOST:
        return bounds(unit, high=value, either_way=expected.test in EITHER_WAY, behind=behind)
    if expected.test in AT_LEAST:
        return bounds(unit, low=value, either_way=expected.test in EITHER_WAY, behind=behind)
    if expected.test == 6:
        share = readings.ON_LOAD_PCT.value / 100 * value
        return bounds(unit, low=share, behind=behind) if value >= 0 else bounds(unit, high=share, behind=behind)
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
