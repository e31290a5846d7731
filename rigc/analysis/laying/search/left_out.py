"""A layout that may have faults -> what has to be left out so that the rest has none, and which wishes are not met."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Board, Item
from rigc.analysis.laying.search.layout import At, Layout
from rigc.analysis.laying.wished import missed
from rigc.record import Record


class LeftOut(Record):
    """`without_room`: items to leave out, each with what it lacks in tenths of a millimetre; `missed`: wishes of the
    others by thing, kind, word and other thing, with how far they are missed."""

    without_room: dict[int, int]
    missed: dict[tuple[str, str, str, str | None], int]


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
            wishes[board.items[wish.item].name, wish.kind, wish.word, other.name if other else None] = far
    return LeftOut(without_room, wishes)
