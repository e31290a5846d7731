"""A layout that may have faults -> what has to be left out so that the rest has none, and what of that has room elsewhere."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import At, Ground
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.own_order import in_own_order


def left_out(board: Board, at: tuple[At, ...]) -> dict[int, int]:
    """Leaves out the item in whose way most is, until nothing is in the way of anything: those left out, each with what it lacks in
    tenths of a millimetre. Of two in whose way as much is the first."""
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
    return without_room


def put_back(board: Board, at: tuple[At, ...]) -> tuple[tuple[At, ...], dict[int, int]]:
    """The layout with each thing that would be left out at the free place nearest to where it was, the smallest first, if there is
    one; and what is left out even so, as `left_out` tells it. A search that finds no layout ends where least is in the way, which may be in the way of more things than need be."""
    ordered = in_own_order(board)
    found, outside = _put_back(ordered.board, ordered.from_source(at))
    return ordered.to_source(found), {ordered.items[item]: short for item, short in outside.items()}


def _put_back(board: Board, at: tuple[At, ...]) -> tuple[tuple[At, ...], dict[int, int]]:
    outside = left_out(board, at)
    if not outside:
        return at, outside
    ground = Ground(board)
    room = FreeRoom(ground)
    standing = set(range(len(board.items))).difference(outside)
    found = list(at)
    for item in sorted(
        outside, key=lambda each: (board.items[each].shapes[0].width * board.items[each].shapes[0].depth, each)
    ):
        place = _nearest(room, item, found, standing)
        if place is not None:
            found[item] = place
            standing.add(item)
    return tuple(found), left_out(board, tuple(found))


def _nearest(room: FreeRoom, item: int, at: list[At], standing: set[int]) -> At | None:
    ground, (was_x, was_y, _) = room.ground, at[item]
    places = [
        (abs(x - was_x) + abs(y - was_y), (x, y, shape))
        for shape in range(len(room.board.items[item].shapes))
        for x, y in room.places(room.of(item, shape, at, standing), [was_x], [was_y])
    ]
    beside = [each for each in ground.beside[item] if each in standing]
    for _, place in sorted(places):
        if ground.is_free(item, place, at, beside):
            return place
    return None
