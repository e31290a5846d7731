"""Points of tests, expected readings and readings taken -> each test with its limit, its last reading and the one before."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.tests.limit import Limit, expected_limit, in_decibels
from rigc.analysis.tests.limits import Board, rule_limit
from rigc.analysis.tests.points import Point, board_outputs, points
from rigc.facts.readings import TOE
from rigc.model.records import Expected, Reading
from rigc.model.rig import Rig
from rigc.record import Record

_Key = tuple[int, str, str]


class Due(Record):
    """A test at a point: `last` and `before` are None where it was not read, or not twice; `passed` where nothing is to judge.

    `expected`: the limit comes from an expected reading.
    """

    test: int
    point: str
    beside: str
    limit: Limit
    expected: bool
    last: Reading | None
    before: Reading | None
    passed: bool | None


class DueTests(Record):
    """In the order of the tests; points that only a reading or an expectation names stand behind the rig's own."""

    all: tuple[Due, ...]


def due_tests(rig: Rig, power: PowerAssignment, leads: Leads, lengths: CableLengths) -> DueTests:
    """Every test that applies to the rig at every point, and every other that the source names."""
    board = Board(rig, power, leads, lengths, board_outputs(leads, rig))
    places = {(each.test, each.point, each.place): each for each in points(rig, power, leads, board.outputs)}
    expected = {_key(rig, each): each for each in rig.expected}
    taken: dict[_Key, list[Reading]] = {}
    for reading in sorted(rig.readings, key=lambda each: each.date):
        taken.setdefault(_key(rig, reading), []).append(reading)
    for test, point, place in (*expected, *taken):
        places.setdefault((test, point, place), Point(test, point, place=place))
    made = [_due(board, each, expected.get(key), taken.get(key, [])) for key, each in places.items()]
    return DueTests(tuple(sorted(made, key=lambda each: each.test)))


def _key(rig: Rig, read: Expected | Reading) -> _Key:
    """An inlet is read as its unit where the test is made at the unit; a treadle's low value is the heel's."""
    name, _, jack = read.point.partition(".")
    inlet = rig.units[name].inlet if read.test == 6 and name in rig.units else None
    point = name if inlet is not None and inlet.name == jack else read.point
    if read.test != 16:
        return read.test, point, ""
    point = point.partition(".")[0]
    return read.test, point, "toe" if read.reading.value > TOE.value / 2 else "heel"


def _due(board: Board, at: Point, expected: Expected | None, taken: list[Reading]) -> Due:
    limit = (
        rule_limit(board, at.test, at.point, at.place)
        if expected is None
        else expected_limit(expected, board.nominal(at.point))
    )
    last = taken[-1] if taken else None
    passed = None
    if last is not None:
        passed = limit.passes(*in_decibels(last.reading.value, last.unit, last.test))
    before = taken[-2] if len(taken) > 1 else None
    return Due(at.test, at.point, at.beside or at.place, limit, expected is not None, last, before, passed)


COMPUTE = due_tests
