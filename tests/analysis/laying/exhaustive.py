"""Every layout of a small board on its grid, left out only where a bound proves that it is too long: the tests' own search.

The boards are those of `small_boards`: a chain, one drop line, nothing below the deck, so that the bounds are short to state.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from functools import cache

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.conflicts import Solid, in_the_way, off_the_deck
from rigc.analysis.laying.search.layout import Layout

At = tuple[int, int, int]
SHORTEST = 900
ONE_ROW = 50
DOWN_AND_UP = 2 * (250 + 120 + 100)  # sockets at 25 mm, a deck of 12 mm, 10 mm at each passage
NO_WAY = 10_000


def total(board: Board, at: list[At]) -> int:
    """All lengths of a layout."""
    return sum(length for length, *_ in Layout(board, at).runs())


def shorter_than(board: Board, limit: float) -> list[At] | None:
    """A layout without faults whose leads are shorter than that in all; None if there is none on the grid."""
    return _Search(board, limit).from_item([], 0)


@cache
def finished(route: int) -> int:
    """30 mm or a tenth more, up to the next whole 10 mm, and 90 mm at least."""
    return max(SHORTEST, -(-(route + max(300, -(-route // 10))) // 100) * 100)


BELOW = finished(DOWN_AND_UP)


class _Search:
    def __init__(self, board: Board, limit: float) -> None:
        self.board, self.limit = board, limit
        self.solids = [[Solid(board, shape, item.height) for shape in item.shapes] for item in board.items]
        self.clear = cache(self._clear)
        self.down = cache(self._down)
        places = [self._places(item) for item in range(len(board.items))]
        self.rest: list[dict[At, int]] = [dict.fromkeys(places[-1], 0)]
        for item in range(len(board.items) - 2, -1, -1):
            self.rest.insert(0, self._rest(item, places[item], self.rest[0]))
        self.below = [self._grouped(item) for item in range(len(board.items))]
        self.over = [self._rows(item) for item in range(len(board.items))]

    def from_item(self, at: list[At], known: int) -> list[At] | None:
        item = len(at)
        if item == len(self.board.items):
            return list(at) if total(self.board, at) < self.limit else None
        for place, least in self._next(at, known):
            if all(
                self.clear(each, there[2], item, place[2], place[0] - there[0], place[1] - there[1])
                for each, there in enumerate(at)
            ):
                found = self.from_item([*at, place], least)
                if found is not None:
                    return found
        return None

    def _next(self, at: list[At], known: int) -> Iterator[tuple[At, int]]:
        """The places of the next item that may still lead to less than the limit, each with the least length so far."""
        item = len(at)
        if not at:
            ranked = sorted(self.rest[0].items(), key=lambda each: each[1])
            yield from ((place, 0) for place, rest in ranked if rest < self.limit)
            return
        x, down, row = self._exit(item - 1, at[-1], 0)[0], self.down(item - 1, at[-1], 0), at[-1][1]
        for place, rest in self.over[item][row]:
            if known + rest + SHORTEST >= self.limit:
                break
            least = known + self._least(item - 1, at[-1], place)
            if least + rest < self.limit:
                yield place, least
        for (rest, column, its), places in self.below[item]:
            if known + rest + BELOW >= self.limit:
                break
            least = known + finished(abs(x - column) + DOWN_AND_UP + down + its)
            if least + rest < self.limit:
                yield from ((place, least) for place in places if place[1] != row)

    def _grouped(self, item: int) -> list[tuple[tuple[int, int, int], list[At]]]:
        """The places of an item that a lead below the deck can't tell apart."""
        groups: dict[tuple[int, int, int], list[At]] = defaultdict(list)
        for place, rest in self.rest[item].items():
            groups[rest, self._exit(item, place, 1)[0], self.down(item, place, 1)].append(place)
        return sorted(groups.items())

    def _rows(self, item: int) -> dict[int, list[tuple[At, int]]]:
        rows: dict[int, list[tuple[At, int]]] = defaultdict(list)
        for place, rest in sorted(self.rest[item].items(), key=lambda each: each[1]):
            rows[place[1]].append((place, rest))
        return rows

    def _places(self, item: int) -> list[At]:
        board = self.board
        return [
            (x, y, number)
            for number, solid in enumerate(self.solids[item])
            for x in range(0, board.width, board.step)
            for y in range(0, board.depth, board.step)
            if not off_the_deck(board, solid, (x, y), False)
        ]

    def _clear(self, one: int, shape: int, other: int, its: int, dx: int, dy: int) -> bool:
        return not in_the_way(self.board, self.solids[one][shape], (0, 0), self.solids[other][its], (dx, dy))

    def _rest(self, item: int, places: list[At], after: dict[At, int]) -> dict[At, int]:
        """The least length of all leads from an item at each place onwards: as if those below the deck met nothing."""
        rows: dict[int, list[tuple[At, int]]] = defaultdict(list)
        columns: dict[int, set[tuple[int, int]]] = defaultdict(set)
        for place, rest in after.items():
            rows[place[1]].append((place, rest))
            columns[self._exit(item + 1, place, 1)[0]].add((rest, self.down(item + 1, place, 1)))
        lean: dict[int, list[tuple[int, int]]] = {x: [] for x in columns}
        for x, pairs in columns.items():
            for rest, down in sorted(pairs):
                if not lean[x] or down < lean[x][-1][1]:
                    lean[x].append((rest, down))
        found = {}
        for place in places:
            x, down = self._exit(item, place, 0)[0], self.down(item, place, 0)
            best = min(
                rest + finished(abs(x - column) + DOWN_AND_UP + down + its)
                for column, pairs in lean.items()
                for rest, its in pairs
            )
            for there, rest in rows[place[1]]:
                if self.clear(item, place[2], item + 1, there[2], there[0] - place[0], 0):
                    best = min(best, rest + self._least(item, place, there))
            found[place] = best
        return found

    def _least(self, item: int, here: At, there: At) -> int:
        """How long the lead from an item to the next is at least: in one row over the deck, or below it."""
        (x1, y1), (x2, y2) = self._exit(item, here, 0), self._exit(item + 1, there, 1)
        below = abs(x1 - x2) + DOWN_AND_UP + self.down(item, here, 0) + self.down(item + 1, there, 1)
        over = abs(x1 - x2) + abs(y1 - y2) if abs(here[1] - there[1]) <= ONE_ROW else below
        return finished(min(over, below))

    def _down(self, item: int, at: At, socket: int) -> int:
        """From an exit to the drop line; a metre, which the route model adds, is the least where the body covers it."""
        x, y = self._exit(item, at, socket)
        shape, line = self.board.items[item].shapes[at[2]], self.board.lines[0]
        if at[0] < x < at[0] + shape.width and at[1] < line < at[1] + shape.depth:
            return NO_WAY * 10 // 11
        return abs(y - line)

    def _exit(self, item: int, at: At, socket: int) -> tuple[int, int]:
        each = self.board.items[item].shapes[at[2]].sockets[socket]
        return at[0] + each.x + each.dx * each.exit, at[1] + each.y + each.dy * each.exit
