"""A layout that may have faults -> what has to be left out so that the rest has none, and which wishes are not met."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Area, Board, Item, Wish
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.wished import missed
from rigc.record import Record

_LOOKED = 100  # places are looked at on a grid of 10 mm
_MUCH = 10**9


class LeftOut(Record):
    """`without_room`: items to leave out, each with what it lacks in tenths of a millimetre; `missed`: wishes of the
    others by thing, kind, word and other thing, with how far they are missed and what would be in the way where they are met (empty: the
    deck's edges and what is kept free)."""

    without_room: dict[int, int]
    missed: dict[tuple[str, str, str, str | None], tuple[int, tuple[str, ...]]]


def left_out(board: Board, at: tuple[At, ...]) -> LeftOut:
    """Leaves out the item in whose way most is, until nothing is in the way of anything."""
    layout = Layout(board, list(at))
    standing = set(range(len(board.items)))
    short = {item: layout.fault_of(item) for item in standing if board.items[item].fixed is None}
    without_room: dict[int, int] = {}
    while short:
        worst = max(short, key=lambda item: short[item])
        if not short[worst]:
            break
        without_room[worst] = short.pop(worst)
        standing.remove(worst)
        for each in layout.beside(worst):
            if each in short:
                short[each] -= layout.fault_between(worst, each)
    boxes = [layout.box(item) for item in range(len(board.items))]
    wishes = {}
    for wish in board.wishes:
        if {wish.item, wish.other} <= {*standing, -1} and (far := missed(board, wish, boxes)):
            other: Item | None = board.items[wish.other] if wish.other >= 0 else None
            key = board.items[wish.item].name, wish.kind, wish.word, other.name if other else None
            wishes[key] = far, _in_its_way(layout, wish, boxes)
    return LeftOut(without_room, wishes)


def _in_its_way(layout: Layout, wish: Wish, boxes: list[Area]) -> tuple[str, ...]:
    """What stands where the wish would be met with the least in the way."""
    board, solid = layout.board, layout.solid(wish.item)
    step = max(_LOOKED, board.step)
    best, found = _MUCH, layout.at[wish.item]
    for x in range(0, board.width - solid.width + 1, step):
        for y in range(0, board.depth - solid.depth + 1, step):
            there = list(boxes)
            there[wish.item] = (x, y, x + solid.width, y + solid.depth)
            if missed(board, wish, there):
                continue
            at = (x, y, layout.at[wish.item][2])
            fault = layout.fault_at(wish.item, at)
            if fault < best:
                best, found = fault, at
    if best == _MUCH:
        return ()
    others = (other for other in layout.beside(wish.item) if layout.between(wish.item, found, other, layout.at[other]))
    return tuple(board.items[other].name for other in others)
