"""Changed parts and the tests of the rig -> those to make again: on paths that were touched, and on what shares an
outlet or a return with them; a mains test only where a mains part was touched."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.plan.changed_parts import ChangedParts, Parts
from rigc.analysis.revision.plan.plan_records import AdaptorPlan, Retest
from rigc.analysis.tests.due_tests import Due, DueTests
from rigc.model.rig import Rig

_SPARED = (
    ((1, 2), "mains earth and insulation", "no mains part is touched"),
    ((3, 4), "leads for audio", "none is made or cut"),
    ((5, 6, 7), "outlets", "no unit is fed otherwise, or through another lead"),
    ((10,), "straight through and treble", "the way past the loops is not touched"),
    ((11, 12), "unity, polarity, noise", "no unit in the sound is touched"),
    ((15,), "MIDI programs", "no MIDI lead or channel changes"),
    ((16,), "treadles", "no control lead is touched"),
    ((20,), "control, MIDI", "none is made or cut"),
)


def retests(rig: Rig, due: DueTests, parts: ChangedParts, adaptors: tuple[AdaptorPlan, ...]) -> tuple[Retest, ...]:
    """By the number of the test; points with one limit stand together."""
    points: dict[tuple[int, str], dict[str, int | None]] = {}
    for test, point, expected, change in _found(rig, due, parts, adaptors):
        points.setdefault((test, expected), {})[point] = change
    found = [Retest(test, tuple(at), expected, _numbers(at)) for (test, expected), at in points.items()]
    return tuple(sorted(found, key=lambda each: each.test))


def _numbers(points: Parts) -> tuple[int, ...]:
    return tuple(sorted({change for change in points.values() if change is not None}))


def spared(due: DueTests, made: tuple[Retest, ...], parts: ChangedParts) -> tuple[str, ...]:
    """The tests that the rig knows and that need not be made again, in words with the reason. Of a mains part that is gone there is
    nothing to test, and it was touched all the same."""
    known, again = {each.test for each in due.all}, {each.test for each in made}
    again |= {1, 2} if parts.mains else set()
    by_reason: dict[str, list[str]] = {}
    for tests, what, why in _SPARED:
        if known & set(tests) and not again & set(tests):
            by_reason.setdefault(why, []).append(what)
    return tuple(f"{', '.join(whats)}: {why}" for why, whats in by_reason.items())


def _found(
    rig: Rig, due: DueTests, parts: ChangedParts, adaptors: tuple[AdaptorPlan, ...]
) -> Iterator[tuple[int, str, str, int | None]]:
    for each in adaptors:
        if each.after is not None:
            yield 5, each.mark, "polarity as marked", each.change
    for one in due.all:
        touched = _touched(rig, one, parts)
        if touched is not None:
            yield one.test, one.point, one.limit.words, touched[0]


def _touched(rig: Rig, one: Due, parts: ChangedParts) -> tuple[int | None] | None:
    """The change that makes a test due again (itself None where no change names it), or None where it holds."""
    thing = one.point.partition(".")[0]
    whole = one.point == rig.head.name
    by_point: dict[int, Parts] = {
        3: parts.cut, 4: parts.cut, 5: parts.outlets, 6: parts.loaded, 7: parts.outlets, 9: parts.come, 11: parts.sounding,
        13: parts.sounding, 15: parts.midi, 16: parts.control, 20: parts.wired,
    }  # fmt: skip
    if one.test in by_point and one.point in by_point[one.test]:
        return (by_point[one.test][one.point],)
    if one.test in (1, 2) and thing in parts.mains:
        return (parts.mains[thing],)
    at_large = {9: parts.through, 10: parts.through, 12: parts.sounding, 14: parts.through, 17: parts.starting}
    if one.test in at_large and at_large[one.test] and (one.test != 9 or one.point not in rig.units):
        return (next(iter(at_large[one.test].values())),)
    if one.test == 19 and parts.supplies and (whole or thing in parts.supplies):
        return (parts.supplies.get(thing, next(iter(parts.supplies.values()))),)
    return None
