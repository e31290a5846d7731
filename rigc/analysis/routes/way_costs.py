"""The ways that leads may take -> what each two cost each other: bad crossings first, then runs side by side, then ties apart."""

from __future__ import annotations

from functools import lru_cache

from rigc.analysis.leads.leads import Lead
from rigc.analysis.routes.kept_apart import apart_mm
from rigc.analysis.routes.stretches import Bounds, Side, around, crossings, parallel_runs
from rigc.analysis.routes.way_choice import Costs
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM, LEAST_ANGLE_DEG
from rigc.model.geometry.neighbours import neighbours
from rigc.model.geometry.rectangle import Rectangle
from rigc.record import Record

FACTOR = 10**7
"""Between the ranks of cost: more tenths of a millimetre than all leads of a board are long."""


class LeadSides(Record):
    """A lead, and of each way that it may take the stretches over the deck and below it."""

    lead: Lead
    ways: tuple[tuple[Side, Side], ...]


def way_costs(leads: list[LeadSides], hearing: frozenset[str], tied: frozenset[frozenset[str]]) -> Costs:
    """The costs of all pairs that should keep apart or are tied; a pair that costs nothing, whichever ways it takes, is left out.

    The weight of a run side by side is higher for a lead that is `hearing` (a pickup drives it).
    """
    found: Costs = {}
    few = len(leads) <= _MOST_KEPT
    make, told = (_kept, _table) if few else (_Kept, _table.__wrapped__)
    made: dict[int, _Kept] = {}

    def kept(place: int) -> _Kept:
        if place not in made:
            made[place] = make(leads[place].ways)
        return made[place]

    rooms = [around(side for way in each.ways for side in way) for each in leads]
    for first, second in neighbours(rooms, BESIDE_AC_MM.value * 10):
        one, other = leads[first], leads[second]
        if len(one.ways) == len(other.ways) == 1:
            continue
        within = apart_mm(one.lead, other.lead)
        if tied and frozenset((one.lead.mark, other.lead.mark)) in tied:
            found[first, second] = tuple(tuple(_apart(a, b) for b in other.ways) for a in one.ways)
        elif within is not None and not _far(rooms[first], rooms[second], within * 10):
            weight = FACTOR**2 if one.lead.mark in hearing or other.lead.mark in hearing else FACTOR
            table = told(kept(first), kept(second), within * 10, weight)
            if any(map(any, table)):
                found[first, second] = table
    return found


def _far(one: Rectangle, other: Rectangle, within: float) -> bool:
    """Whether all that is in the one stays further than that from all in the other, or could only meet it at corners."""
    beside = max(one.x_mm, other.x_mm) - min(one.right_mm, other.right_mm)
    before = max(one.y_mm, other.y_mm) - min(one.rear_mm, other.rear_mm)
    return beside > within or before > within or (beside > 0 and before > 0)


_Bounded = tuple[Side, Bounds]
_Deck = tuple[list[int], list[_Bounded]]
"""One side of the deck: for each way of a lead the place of its stretches among those that differ, with their bounds."""


_MOST_KEPT = 300
"""Of so many leads it is kept what their ways cost each other: after an edit most run as they did."""


class _Kept:
    """The ways of a lead; an object that stands for all that are equal."""

    def __init__(self, ways: tuple[tuple[Side, Side], ...]) -> None:
        self.above, self.below = (_deck(tuple(way[at] for way in ways)) for at in (0, 1))


_kept = lru_cache(maxsize=4 * _MOST_KEPT)(_Kept)


def _deck(sides: tuple[Side, ...]) -> _Deck:
    places: dict[Side, int] = {}
    at = [places.setdefault(side, len(places)) for side in sides]
    return at, [(side, side.bounds) for side in places]


@lru_cache(maxsize=40 * _MOST_KEPT)
def _table(one: _Kept, other: _Kept, within: float, weight: int) -> tuple[tuple[int, ...], ...]:
    """The cost of each way of the one with each of the other. Many ways are the same on one side of the deck: that is
    looked at once."""
    above = _costs(one.above[1], other.above[1], within, weight)
    below = _costs(one.below[1], other.below[1], within, weight)
    rows = list(zip(one.above[0], one.below[0], strict=True))
    columns = list(zip(other.above[0], other.below[0], strict=True))
    return tuple(tuple(above[up][over] + below[down][under] for over, under in columns) for up, down in rows)


def _costs(mine: list[_Bounded], theirs: list[_Bounded], within: float, weight: int) -> list[list[int]]:
    """What the ways of two leads on one side of the deck cost each other: nothing where they stay further apart than that, or only meet
    at corners beyond it."""
    rows = []
    for one, (left, right, front, rear) in mine:
        row = []
        for other, (start, end, near, far) in theirs:
            beside = (left if left > start else start) - (right if right < end else end)
            before = (front if front > near else near) - (rear if rear < far else far)
            apart = beside > within or before > within or (beside > 0 and before > 0)
            row.append(0 if apart else _cost(one, other, within, weight))
        rows.append(row)
    return rows


def _cost(one: Side, other: Side, within: float, weight: int) -> int:
    cost = 0
    for long, apart in parallel_runs(one, other, within):
        cost += round(long) * weight + (FACTOR**3 if apart == 0 else 0)
    if one.askew or other.askew:
        cost += sum(0 < angle < LEAST_ANGLE_DEG.value for angle in crossings(one, other)) * FACTOR**3
    return cost


def _apart(one: tuple[Side, Side], other: tuple[Side, Side]) -> int:
    """How much of two tied leads does not lie together."""
    sides = list(zip(one, other, strict=True))
    length = sum(min(_length(mine), _length(theirs)) for mine, theirs in sides)
    side_by_side = sum(
        long for mine, theirs in sides for long, _ in parallel_runs(mine, theirs, BESIDE_DC_MM.value * 10)
    )
    return round(max(length - side_by_side, 0))


def _length(side: Side) -> float:
    return sum(end - start for _, start, end in (*side.along_x, *side.along_y))
