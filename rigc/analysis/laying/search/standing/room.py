"""A board and where its things stand -> all standing, or as many as can be made to: what waits goes in as `Ejection` has it, each thing by itself,
and neither leads nor wishes are asked.

Whether there is room at all is found so in a fraction of the steps that a layout takes in which the leads keep their rules, too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Glue
from rigc.analysis.laying.search.ground import At, Ground
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.rows.ejection import Ejection
from rigc.analysis.laying.search.rows.first_layout import first_layout

PLACES = 60_000  # a finer grid than one with so many is made coarser
_EACH, _MOST = 2_000, 40_000  # steps for each free thing, and at most
_ENOUGH = 300  # steps for each, where all but a few stand already
_COARSE = 50  # tenths of a millimetre of the grid on which the place is sought where a thing lacks least


class Room:
    """Asked of one board. `at` is where all stand once they do, else where most did: what had no room stood elsewhere then, and is `outside`."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self._glue = Glue(FreeRoom(Ground(board.replace(links=(), wishes=())), PLACES))
        self.at: tuple[At, ...] = ()
        self.outside: tuple[int, ...] = ()

    def fill_all(self) -> Iterator[int]:
        """Makes all free things stand, for as many steps as show nearly always whether they can; always the same way."""
        free = [number for number, item in enumerate(self.board.items) if item.fixed is None]
        return self.fill(first_layout(self.board), free, min(_MOST, _EACH * len(free)))

    def fill(self, at: Iterable[At], waiting: Iterable[int], steps: int) -> Iterator[int]:
        """Makes what is `waiting` stand beside the rest, for so many steps at most; each time the steps that it took."""
        rows = [((item, 0, 0, 0),) for item in waiting]
        start = tuple(at)
        standing = set(range(len(start))).difference(item for ((item, *_),) in rows)
        filling = Ejection(self._glue, Dice(1), start, standing, rows)
        self._note(filling)
        for taken in filling.run(steps):
            if len(filling.waiting) < len(self.outside):
                self._note(filling)
            yield taken

    def _note(self, filling: Ejection) -> None:
        self.at, self.outside = tuple(filling.at), tuple(item for row in filling.waiting for item, *_ in row)


def has_room(board: Board) -> bool:
    """Whether all can be made to stand. Where it says so the search leaves nothing out: it asks the same before it does."""
    room = Room(board)
    for _ in room.fill_all():
        pass
    return not (room.outside or left_out(board, room.at))


def made_room(board: Board, at: tuple[At, ...], waiting: Iterable[int] = ()) -> tuple[At, ...] | None:
    """All standing, begun from a layout in which most do; None where that is not found soon. What is `waiting`, and what is in the way of
    something there, goes where it has room."""
    out = list(dict.fromkeys((*waiting, *left_out(board, at))))
    found = moved(board, at, out) if out else at
    return None if left_out(board, found) else found


def moved(board: Board, at: tuple[At, ...], out: list[int]) -> tuple[At, ...]:
    """As many of the things that are `out` as soon can be stand beside the rest; the others where they were."""
    free = sum(item.fixed is None for item in board.items)
    room = Room(board)
    for _ in room.fill(at, out, _ENOUGH * free):
        pass
    return room.at


def least_lacking(ground: Ground, item: int, at: Sequence[At], standing: Iterable[int]) -> tuple[int, At]:
    """By how much a thing is in the way of those that are standing, or off its ground, at the place where that is least; on a coarse grid."""
    board, there = ground.board, frozenset(standing)
    beside = [other for other in ground.beside[item] if other in there]
    best = 1 << 60, at[item]
    for shape, solid in enumerate(ground.solids[item]):
        xs, ys = (
            range(0, max(0, size) + 1, _COARSE) for size in (board.width - solid.width, board.depth - solid.depth)
        )
        for here in ((x, y, shape) for x in xs for y in ys):
            lacks = ground.alone(item, here)
            for other in beside:
                if lacks >= best[0]:
                    break
                lacks += ground.between(item, here, other, at[other])
            best = min(best, (lacks, here))
    return best
