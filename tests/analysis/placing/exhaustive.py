"""Every layout of a small board on its grid, left out only where a bound proves that it is too long: the tests' own search."""

from __future__ import annotations

from functools import cache

from rigc.analysis.placing.board import Board
from rigc.analysis.placing.conflicts import Solid, in_the_way, off_the_deck
from rigc.analysis.placing.layout import Layout

At = tuple[int, int, int]
SHORTEST = 900


def total(board: Board, at: list[At]) -> int:
    """All lengths of a layout."""
    return sum(length for length, _ in Layout(board, at).runs())


def shorter_than(board: Board, limit: float) -> list[At] | None:
    """A layout without faults whose leads are shorter than that in all; None if there is none on the grid."""
    return _Search(board, limit).from_item([], 0)


class _Search:
    def __init__(self, board: Board, limit: float) -> None:
        self.board, self.limit = board, limit
        self.solids = [[Solid(board, shape, item.height) for shape in item.shapes] for item in board.items]
        self.places = [self._places(item) for item in range(len(board.items))]
        self.clear = cache(self._clear)

    def from_item(self, at: list[At], known: int) -> list[At] | None:
        item = len(at)
        if item == len(self.board.items):
            return list(at) if total(self.board, at) < self.limit else None
        for place in self.places[item]:
            least = known + (self._least(at[-1], item, place) if at else 0)
            rest = SHORTEST * (len(self.board.items) - 1 - item)
            if least + rest >= self.limit:
                continue
            if all(
                self.clear(each, there[2], item, place[2], place[0] - there[0], place[1] - there[1])
                for each, there in enumerate(at)
            ):
                found = self.from_item([*at, place], least)
                if found is not None:
                    return found
        return None

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

    def _least(self, before: At, item: int, place: At) -> int:
        """No way is shorter than along x and y; below the deck also down and up: 2 x (25 + 12 + 10) mm."""
        x1, y1 = self._exit(item - 1, before, 0)
        x2, y2 = self._exit(item, place, 1)
        route = abs(x1 - x2) + abs(y1 - y2) + (0 if abs(before[1] - place[1]) <= 50 else 940)
        return max(SHORTEST, -(-(route + max(300, -(-route // 10))) // 100) * 100)

    def _exit(self, item: int, at: At, socket: int) -> tuple[int, int]:
        each = self.board.items[item].shapes[at[2]].sockets[socket]
        return at[0] + each.x + each.dx * each.exit, at[1] + each.y + each.dy * each.exit
