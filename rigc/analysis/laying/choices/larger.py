"""A deck that is too small -> the least larger ones that take all: wider, deeper, and another of those that the rig knows. Each was tried."""

from __future__ import annotations

from rigc.analysis.laying.choices.task import Task
from rigc.analysis.laying.not_placed import Larger
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.standing.room import has_room, made_room
from rigc.model.deck import Deck
from rigc.model.fact import Fact

_GRID, _MOST = 10, 400  # mm: decks are larger by whole steps of the one, and by the other at most
_BESIDE = 3  # so many steps of the grid more are tried where the least does not do
_OTHERS = 2  # so many other decks are tried, the smallest first


def larger(task: Task, at: tuple[At, ...]) -> tuple[Larger, ...]:
    """At most one that is wider, one that is deeper, and, where neither is found, another deck. `at` is the layout with the fewest things in the
    way on the own deck."""
    found = [each for each in (_least(task, at, True), _least(task, at, False)) if each is not None]
    return tuple(found) or _another(task)


def _least(task: Task, at: tuple[At, ...], wider: bool) -> Larger | None:
    """By halves, each time from where all stood last; what does so is laid as it would be."""
    own = (task.board.width if wider else task.board.depth) // (10 * _GRID)

    def size(steps: int) -> int:
        return (own + steps) * 10 * _GRID

    low, high = 0, _MOST // _GRID
    stood = made_room(_with(task.board, size(high), wider), at)
    if stood is None:
        return None
    while high - low > 1:
        middle = (low + high) // 2
        tried = made_room(_with(task.board, size(middle), wider), stood)
        if tried is None:
            low = middle
        else:
            high, stood = middle, tried
    for steps in range(high, high + _BESIDE):
        width = size(steps) / 10 if wider else task.board.width / 10
        depth = task.board.depth / 10 if wider else size(steps) / 10
        if has_room(task.on(_sized(task, width, depth)).board):
            return Larger(width, depth)
    return None


def _with(board: Board, size: int, wider: bool) -> Board:
    made: Board = board.replace(width=size) if wider else board.replace(depth=size)
    return made


def _sized(task: Task, width: float, depth: float) -> Deck:
    declared = task.deck.declared
    sides = {"width_mm": width, "depth_mm": depth}
    made: Deck = task.deck.replace(**{side: Fact(mm, f"{mm:g} mm", declared) for side, mm in sides.items()})
    return made


def _another(task: Task) -> tuple[Larger, ...]:
    used = {place.deck for place in task.rig.places.values()}
    sizes = {
        each.name: (each.width_mm.value, each.depth_mm.value)
        for each in task.rig.decks.values()
        if each.width_mm is not None and each.depth_mm is not None and each.name not in {*used, task.deck.name}
    }
    own = task.board.width * task.board.depth / 100
    areas = sorted((width * depth, name) for name, (width, depth) in sizes.items() if width * depth > own)
    for _, name in areas[:_OTHERS]:
        deck = task.rig.decks[name].replace(name=task.deck.name, declared=task.deck.declared)
        if has_room(task.on(deck).board):
            return (Larger(*sizes[name], name),)
    return ()
