"""A few things of a board -> whether they can't stand on it together, whatever else stands there: all ways are gone through in which one of two
may stand to the left, to the right, in front or behind the other.

Each rule tells where the corner of one may not be, seen from another's: open rectangles (see `forbidden`), which are taken too small, never too
large. With a side chosen for each, what is left are differences of coordinates, and the least coordinates that keep them are found by
repeating. So nothing is proved that is not so.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from rigc.analysis.laying.search.board import Area, Board
from rigc.analysis.laying.search.conflicts import Solid
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import Ground

_FAR = 1 << 20
_SHAPES = 16  # so many ways of turning the things are gone through at most

Rule = tuple[int, int, Area]  # the corner of the second may not be inside the area, seen from the first; 0 is the deck
Bound = tuple[int, int, int, int]  # the axis, two things, and by how much the second's coordinate is greater at least


class Apart:
    """Asked of a few things of one board; `turns` is how many sides were tried."""

    def __init__(self, board: Board, items: tuple[int, ...]) -> None:
        self.board, self.items = board, items
        self._ground = Ground(board)
        self._room = FreeRoom(self._ground)
        self.turns = 0

    def impossible(self, turns: int) -> bool:
        """Whether it is proved, with so many turns, that they can't stand together."""
        ways = list(product(*(range(len(self.board.items[item].shapes)) for item in self.items)))
        if len(ways) > _SHAPES:
            return False
        self._most = self.turns + turns
        return all(self._cant(shapes) for shapes in ways)

    def _cant(self, shapes: tuple[int, ...]) -> bool:
        solids = [self._ground.solids[item][shape] for item, shape in zip(self.items, shapes, strict=True)]
        low: list[list[int]] = [[0], [0]]
        high: list[list[int]] = [[0], [0]]
        for item, solid in zip(self.items, solids, strict=True):
            left, front, right, rear = solid.reach
            fixed = self.board.items[item].fixed
            low[0].append(fixed[0] if fixed else -left)
            low[1].append(fixed[1] if fixed else -front)
            high[0].append(fixed[0] if fixed else self.board.width - right)
            high[1].append(fixed[1] if fixed else self.board.depth - rear)
        return self._none(low, high, [], list(self._rules(shapes, solids)))

    def _rules(self, shapes: tuple[int, ...], solids: list[Solid]) -> Iterator[Rule]:
        board = self.board
        for number, (item, shape, solid) in enumerate(zip(self.items, shapes, solids, strict=True), start=1):
            it = board.items[item]
            if it.fixed is None:
                for area in (*board.kept_free, *(() if it.under else board.reserved)):
                    yield 0, number, (area[0] - solid.width, area[1] - solid.depth, area[2], area[3])
                for edge in () if it.under else {edge for tier in board.tiers for edge in (tier.front, tier.rear)}:
                    yield 0, number, (-_FAR, edge - solid.depth, _FAR, edge)
                for front, rear in self._off_ground(item, shape):
                    yield 0, number, (-_FAR, front, _FAR, rear)
            for other in range(number):
                if other and not (it.fixed is not None and board.items[self.items[other - 1]].fixed is not None):
                    beside = self.items[other - 1], shapes[other - 1]
                    yield from ((other, number, area) for area in self._room.areas(*beside, item, shape))

    def _off_ground(self, item: int, shape: int) -> Iterator[tuple[int, int]]:
        """From where to where in y it is too tall, between places of the grid where it is not."""
        rows = self._room.rows_on_ground(item, shape)
        if rows is None:
            return
        for front, rear in zip((-_FAR, *rows), (*rows, _FAR), strict=True):
            if rear - front > self.board.step:
                yield front, rear

    def _none(self, low: list[list[int]], high: list[list[int]], bounds: list[Bound], rules: list[Rule]) -> bool:
        """Whether no places between these keep all bounds and rules."""
        while _tightened(low, high, bounds):
            forced, chosen, best = None, -1, None
            for number, rule in enumerate(rules):
                ways = _ways(low, high, *rule)
                if ways is None:
                    continue
                if len(ways) < 2:
                    forced, chosen = ways, number
                    break
                if (best is None or len(ways) < len(best)) and _is_inside(low, *rule):
                    chosen, best = number, ways
            left = [*rules[:chosen], *rules[chosen + 1 :]]
            if forced is not None:
                if not forced:
                    return True
                bounds, rules = [*bounds, *forced], left
                continue
            if best is None:
                return False  # all at their least coordinates is a layout
            for way in best:
                self.turns += 1
                if self.turns > self._most:
                    return False
                if not self._none([list(each) for each in low], [list(each) for each in high], [*bounds, way], left):
                    return False
            return True
        return True


def _tightened(low: list[list[int]], high: list[list[int]], bounds: list[Bound]) -> bool:
    """The least and the greatest coordinates that keep the bounds; whether there are any. What has not settled after as many rounds as there are
    things never will: bounds that go in a ring ask for more each time."""
    for _ in range(len(low[0]) + 1):
        changed = False
        for axis, one, other, far in bounds:
            least, most = low[axis], high[axis]
            if least[one] + far > least[other]:
                least[other], changed = least[one] + far, True
            if most[other] - far < most[one]:
                most[one], changed = most[other] - far, True
            if least[one] > most[one] or least[other] > most[other]:
                return False
        if not changed:
            break
    else:
        return False
    return all(least <= most for axis in (0, 1) for least, most in zip(low[axis], high[axis], strict=True))


def _ways(low: list[list[int]], high: list[list[int]], one: int, other: int, area: Area) -> list[Bound] | None:
    """The sides on which the second may still be kept out of the area; None where it is outside anyway."""
    ways: list[Bound] = []
    for axis, (least, most) in enumerate(((area[0], area[2]), (area[1], area[3]))):
        nearest, furthest = low[axis][other] - high[axis][one], high[axis][other] - low[axis][one]
        if furthest <= least or nearest >= most:
            return None
        if nearest <= least:
            ways.append((axis, other, one, -least))
        if furthest >= most:
            ways.append((axis, one, other, most))
    return ways


def _is_inside(low: list[list[int]], one: int, other: int, area: Area) -> bool:
    x, y = low[0][other] - low[0][one], low[1][other] - low[1][one]
    return area[0] < x < area[2] and area[1] < y < area[3]
