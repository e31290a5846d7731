"""A board -> a first layout to better: rows from the front, filled from right to left in the order of the signal."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.shelves import on_shelves

_CROWD = 60  # more free things than a search can sort out are laid without faults at once


def first_layout(board: Board) -> list[At]:
    """A place for each item, fixed ones where they stay. Not yet free of faults."""
    at: list[At] = [(0, 0, 0)] * len(board.items)
    order = _order(board)
    for under in (False, True):
        row = [number for number in order if board.items[number].under == under]
        x, y, deepest = board.width - _margin(board, row), board.step, 0
        for number in row:
            shape = board.items[number].shapes[0]
            margin = _plugs_aside(board, number)
            if x - shape.width - margin < 0 and deepest:
                x, y, deepest = board.width - margin, min(y + deepest, board.depth - board.step), 0
            x -= shape.width + margin
            y = y if under else _on_one_ground(board, y, shape.depth)
            at[number] = (
                _grid(board, max(0, min(x, board.width - shape.width))),
                _grid(board, max(0, min(y, board.depth - shape.depth))),
                0,
            )
            deepest = max(deepest, shape.depth + _plugs_behind(board, number))
    for number, item in enumerate(board.items):
        if item.fixed is not None:
            at[number] = (*item.fixed, 0)
    return on_shelves(board, order, at) if len(order) > _CROWD else at


def _on_one_ground(board: Board, y: int, depth: int) -> int:
    """The same, or the next edge of a tier to the rear at which the row that begins there would not cross one."""
    for tier in sorted(board.tiers, key=lambda each: each.front):
        for edge in (tier.front, tier.rear):
            if y < edge < y + depth <= board.depth:
                y = edge
    return y


def _order(board: Board) -> list[int]:
    """Front rows first; then those wanted near the player, the deep ones; the others as the signal goes."""
    rows = {
        wish.items[0]: {"front": 0, "middle": 2, "rear": 3}.get(wish.word, 0)
        for wish in board.wishes
        if wish.kind in ("row", "reach") or (wish.kind, wish.word) == ("near_edge", "front")
    }
    deepest = max((item.shapes[0].depth for item in board.items), default=0)
    free = [number for number, item in enumerate(board.items) if item.fixed is None]

    def key(number: int) -> tuple[int, int]:
        item = board.items[number]
        tall = 3 * item.shapes[0].depth > 2 * deepest and len(item.shapes) == 1 and not item.under
        return rows.get(number, 1), -item.use - (1 if tall else 0)

    return sorted(free, key=lambda number: (*key(number), number))


def _margin(board: Board, row: list[int]) -> int:
    return max((_plugs_aside(board, number) for number in row[:1]), default=0)


def _plugs_aside(board: Board, number: int) -> int:
    sockets = board.items[number].shapes[0].sockets
    return max((each.needs + board.air for each in sockets if each.dx), default=0) + board.apart


def _plugs_behind(board: Board, number: int) -> int:
    sockets = board.items[number].shapes[0].sockets
    return max((each.needs + board.air for each in sockets if each.dy), default=0) + board.apart


def _grid(board: Board, length: int) -> int:
    return length // board.step * board.step
