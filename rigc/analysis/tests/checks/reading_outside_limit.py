"""The last reading of a test at a point lies outside its limit.

Why it matters: a reading outside its limit is a fault that waits for the show; one inside is what fault-finding compares with later.
What to do: measure again, mend what the test points at, and enter the new reading: the last one of a test at a point counts.
Limits: 1 earth bond {readings.BOND_OHM} at most, 2 mains insulation {readings.INSULATION_MOHM} at least (both by a competent person); 3 audio lead under {readings.LEAD_OHM},
{readings.LONG_LEAD_OHM.value} over 1 m, 4 over {readings.LEAKAGE_MOHM}; 5 plug without load {readings.OFF_LOAD_LOW_V[9].value} to {readings.OFF_LOAD_HIGH_V[9]} at 9 V, {readings.OFF_LOAD_LOW_V[12].value} to {readings.OFF_LOAD_HIGH_V[12].value} at 12 V, {readings.OFF_LOAD_LOW_V[18].value} to {readings.OFF_LOAD_HIGH_V[18].value} at 18 V, unregulated up to
{readings.UNREGULATED_SHARE} times; 6 under load {readings.ON_LOAD_PCT} of nominal at least; 7 ripple {readings.RIPPLE_MV[linear]} linear, {readings.RIPPLE_MV[switch-mode]} switch-mode; 8 between outlets over {readings.ISOLATION_MOHM}; 9 straight
through ±{readings.THROUGH_DB}, a bypassed unit ±{readings.BYPASS_DB}; 10 treble {readings.TREBLE_DB} down; 11 noted; 12 noise +{readings.NOISE_DB}; 13 hum {readings.HUM_DB} of {readings.TEST_TONE_DBU}; 14 mute {readings.MUTE_DB};
15 MIDI {readings.FOLLOW_MS}; 16 treadle {readings.HEEL} and {readings.TOE}; 17 switching on and 18 mechanics are looked at; 19 supply under {readings.SUPPLY_C}, units {readings.UNIT_C}.
A stated `expects` goes before: it is the most or the least where the test has one; in test 5 the band of its voltage lies around
it, in test 6 {readings.ON_LOAD_PCT} of it must be there, levels may differ by {readings.THROUGH_DB}, all else by {readings.EXPECTED_PCT}. Without a limit nothing is told.
Source: common practice, no source; tests 1 and 2: EN 50678, EN 50699 and the UK code of practice, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.tests import TESTS
from rigc.model.records import Reading
from rigc.model.rig import Rig

if TYPE_CHECKING:  # most boards are checked before they are measured
    from rigc.analysis.tests.due_tests import Due

KIND = Kind(
    "reading-outside-limit",
    Level.WARNING,
    __doc__,
    "the last reading of a test at a point keeps to what is expected there, else to the limit of the test",
    "common practice, no source; mains tests: EN 50678 and EN 50699, from memory",
)


def reading_outside_limit(rig: Rig, results: Results) -> Iterator[Diagnostic]:
    """One finding for each such reading; without any, no test is looked at."""
    if not rig.readings:
        return
    from rigc.analysis.tests.due_tests import DueTests

    for each in results.get(DueTests).all:
        if each.last is not None and each.passed is False:
            yield _told(rig, each, each.last)


def _told(rig: Rig, due: Due, last: Reading) -> Diagnostic:
    test = TESTS.get(due.test)
    name = f" ({test.name})" if test is not None else ""
    bounds = [("least", due.limit.low), ("most", due.limit.high)]
    stated = [each.span for each in rig.expected if (each.test, each.point) == (due.test, last.point)]
    return KIND.at(
        last.span,
        f"test {due.test}{name} at {last.point} read {last.reading.typed} on {last.date}; the limit is {due.limit.words}",
        subject=(last.point, f"test {due.test}"),
        label=_label(due, last),
        also=tuple(Label(span, "expected here") for span in stated if due.expected),
        numbers=(
            Number("reading", last.reading.value, last.unit),
            *(Number(word, value, due.limit.unit) for word, value in bounds if value is not None),
        ),
        note=f"read {due.before.reading.typed} on {due.before.date}" if due.before is not None else "",
        help=test.mend if test is not None else "measure again; then look for what has changed",
    )


def _label(due: Due, last: Reading) -> str:
    turned = last.unit == "V" and last.reading.value < 0 and due.limit.low is not None
    return "negative: the poles are turned round" if turned else "outside its limit"


CHECK = reading_outside_limit
