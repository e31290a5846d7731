"""A board and an effort -> what a search finds, or found before: the same board is searched once, however often the source around it changes.

What is kept hangs on the board as numbers, on the effort, and on nothing else; names of things and numbers of leads, which no search reads,
do not count. So a result is the same with and without.
"""

from __future__ import annotations

from hashlib import sha256
from typing import TYPE_CHECKING, Protocol

from rigc.analysis.laying.search.board import Board, Shape

if TYPE_CHECKING:
    from rigc.analysis.laying.search.annealing import Watch
    from rigc.analysis.laying.search.found import Found

Numbers = list[list[int]]
"""A layout as it is kept: where each item stands, then what `Found` tells of it beside that."""
_MOST = 500  # searches of this process that are remembered


class Behind(Protocol):
    """Keeps what was found for the next process, or loses it: a search is only done anew then."""

    def read(self, key: str) -> Numbers | None:
        """What was kept under that key."""

    def write(self, key: str, found: Numbers) -> None:
        """Keeps it, if that can be."""


class Known:
    """What was found before, in this process, and `behind` that by others."""

    def __init__(self, behind: Behind | None = None) -> None:
        self.behind = behind
        self._found: dict[str, Found] = {}

    def search(self, board: Board, effort: int, patience: int = 0, watch: Watch | None = None) -> Found:
        """As `annealing.search`; what was interrupted is not kept."""
        key = sha256(f"{effort} {patience} {_nameless(board)!r}".encode()).hexdigest()
        found = self._found.pop(key, None) or self._from_behind(key, board)
        if found is None:
            from rigc.analysis.laying.search.annealing import search

            found = search(board, effort, patience, watch)
            if found.stopped:
                return found
            if self.behind is not None:
                told = [found.hard, found.missed, found.cost, found.steps]
                self.behind.write(key, [*map(list, found.at), told])
        self._found[key] = found  # the last that was asked for is the last to be forgotten
        if len(self._found) > _MOST:
            del self._found[next(iter(self._found))]
        return found

    def _from_behind(self, key: str, board: Board) -> Found | None:
        numbers = None if self.behind is None else self.behind.read(key)
        if numbers is None or len(numbers) != len(board.items) + 1:
            return None
        from rigc.analysis.laying.search.found import Found

        *places, (hard, missed, cost, steps) = numbers
        return Found(tuple((x, y, shape) for x, y, shape in places), hard, missed, cost, steps)


def _nameless(board: Board) -> Board:
    items = tuple(item.replace(name="", shapes=tuple(map(_bare, item.shapes))) for item in board.items)
    links = tuple(link.replace(mark="") for link in board.links)
    nameless: Board = board.replace(items=items, links=links)
    return nameless


def _bare(shape: Shape) -> Shape:
    bare: Shape = shape.replace(sockets=tuple(socket.replace(jack="") for socket in shape.sockets))
    return bare


KNOWN = Known()
"""That of this process."""
