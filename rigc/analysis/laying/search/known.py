"""A board and an effort -> what a search finds, or found before; a layout -> what it settles to: the same board is searched once, however often the source around it changes.

What is kept hangs on the board as numbers, in its own order, on the effort, and on nothing else; names of things and numbers of leads, which no search
reads, do not count, nor does what stands before what in the source. So a result is the same with and without.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from hashlib import sha256
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # whoever reads a rig says where to keep; most rigs have nothing to lay
    from rigc.analysis.kept import Kept
    from rigc.analysis.laying.search.annealing import Watch
    from rigc.analysis.laying.search.board import Board
    from rigc.analysis.laying.search.found import Found
    from rigc.analysis.laying.search.ground import At

Numbers = list[list[int]]
"""A layout as it is kept: where each item stands, then what `Found` tells of it beside that."""
_MOST = 500  # searches of this process that are remembered


class Known:
    """What was found before: in this process, and, as far as it is `kept`, in others; nothing is kept where nobody says where."""

    def __init__(self, kept: Callable[[], Kept] | None = None) -> None:
        self.kept = kept
        self._found: dict[str, Found] = {}

    def search(
        self,
        board: Board,
        effort: int,
        patience: int = 0,
        watch: Watch | None = None,
    ) -> Found:
        """As `annealing.search` of the board in its own order; what was interrupted is not kept."""
        from rigc.analysis.laying.search.own_order import in_own_order

        ordered = in_own_order(board)
        found = self._searched(ordered.board, effort, patience, watch)
        told: Found = found.replace(at=ordered.to_source(found.at))
        return told

    def rest(self, board: Board, found: Found) -> Found:
        """As `settling.at_rest` of the layout on the board in its own order; as it is where something is in the way in it."""
        from rigc.analysis.laying.search.own_order import in_own_order

        if found.hard:
            return found
        ordered = in_own_order(board)
        rested = self._rested(ordered.board, ordered.from_source(found.at))
        told: Found = found.replace(at=ordered.to_source(rested.at), missed=rested.missed, cost=rested.cost)
        return told

    def _searched(self, board: Board, effort: int, patience: int, watch: Watch | None) -> Found:
        def searched() -> Found:
            from rigc.analysis.laying.search.annealing import search

            return search(board, effort, patience, watch)

        return self._remembered(board, f"{effort} {patience}", searched)

    def _rested(self, board: Board, at: tuple[At, ...]) -> Found:
        def rested() -> Found:
            from rigc.analysis.laying.search.rows.settling import at_rest

            return at_rest(board, at)

        return self._remembered(board, f"at rest {at}", rested)

    def _remembered(self, board: Board, asked: str, find: Callable[[], Found]) -> Found:
        from rigc.analysis.laying.search.own_order import nameless

        key = sha256(f"{asked} {nameless(board)!r}".encode()).hexdigest()
        found = self._found.pop(key, None)
        if found is None:
            from rigc.analysis.kept import NOTHING_KEPT

            def made() -> Numbers:
                new = find()
                if new.stopped:
                    raise _Stopped(new)
                return [*map(list, new.at), [new.hard, new.missed, new.cost, new.steps]]

            try:
                kept = self.kept() if self.kept is not None else NOTHING_KEPT
                found = _found(kept.answer("laid", key, made, partial(_checked, board)))
            except _Stopped as stopped:
                return stopped.found
        self._found[key] = found  # the last that was asked for is the last to be forgotten
        if len(self._found) > _MOST:
            del self._found[next(iter(self._found))]
        return found


class _Stopped(Exception):
    """Someone ended the search before its end."""

    def __init__(self, found: Found) -> None:
        super().__init__()
        self.found = found


def _checked(board: Board, numbers: Numbers) -> Numbers:
    """Raises `ValueError` for what is no layout of that board."""
    if [len(each) for each in numbers] != [*(3 for _ in board.items), 4]:
        raise ValueError("no layout of this board")
    return numbers


def _found(numbers: Numbers) -> Found:
    from rigc.analysis.laying.search.found import Found

    *places, (hard, missed, cost, steps) = numbers
    return Found(tuple((x, y, shape) for x, y, shape in places), hard, missed, cost, steps)


KNOWN = Known()
"""That of this process."""
