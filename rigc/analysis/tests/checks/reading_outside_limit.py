"""The last reading of a test at a point lies outside its limit.

Why it matters: a reading outside its limit is a fault that waits for the show; one inside is what fault-finding compares with later.
What to do: measure again, mend what the test points at, and enter the new reading: the last one of a test at a point counts.
Limits: 1 earth bond 0.1 ohm at most, 2 mains insulation 1 Mohm at least (both by a competent person); 3 audio lead under 0.3 ohm,
0.5 over 1 m, 4 over 20 Mohm; 5 plug without load 8.7 to 9.9 V at 9 V, 11.6 to 12.9 at 12 V, 17.4 to 19.5 at 18 V, unregulated up to
1.5 times; 6 under load 95 % of nominal at least; 7 ripple 10 mV linear, 30 mV switch-mode; 8 between outlets over 1 Mohm; 9 straight
through ±0.5 dB, a bypassed unit ±0.3 dB; 10 treble 1.5 dB down; 11 noted; 12 noise +3 dB; 13 hum -70 dB of -20 dBu; 14 mute 70 dB;
15 MIDI 20 ms; 16 treadle 0 and 127; 17 switching on and 18 mechanics are looked at; 19 supply under 60 °C, units 50 °C.
A stated `expects` goes before: it is the most or the least where the test has one; in test 5 the band of its voltage lies around
it, in test 6 95 % of it must be there, levels may differ by 0.5 dB, all else by 5 %. Without a limit nothing is told.
Source: common practice, no source; tests 1 and 2: EN 50678, EN 50699 and the UK code of practice, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.tests.due_tests import Due, DueTests
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.tests import TESTS
from rigc.model.records import Reading
from rigc.model.rig import Rig

KIND = Kind(
    "reading-outside-limit",
    Level.WARNING,
    __doc__,
    "the last reading of a test at a point keeps to what is expected there, else to the limit of the test",
    "common practice, no source; mains tests: EN 50678 and EN 50699, from memory",
)


def reading_outside_limit(rig: Rig, due: DueTests) -> Iterator[Diagnostic]:
    """One finding for each such reading."""
    for each in due.all:
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
