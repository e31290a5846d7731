"""A board with a crowd of things -> a first layout on shelves: each in a box of its own, so that none is in another's way."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Area, Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.safe_boxes import safe_boxes


def on_shelves(board: Board, order: list[int], at: list[At]) -> list[At]:
    """Places for the things in `order`, from the front and from the right; `at` holds where the fixed ones stand.

    What finds no room stays where `at` has it.
    """
    boxes, laid = safe_boxes(board, board.items), list(at)
    for under in (False, True):
        fixed = [
            _moved(boxes[number], at[number])
            for number, item in enumerate(board.items)
            if item.fixed is not None and item.under == under
        ]
        blocked = [*fixed, *board.kept_free, *(() if under else board.reserved)]
        edges = () if under else tuple(sorted({edge for tier in board.tiers for edge in (tier.front, tier.rear)}))
        _fill(board, [number for number in order if board.items[number].under == under], boxes, blocked, edges, laid)
    return laid


def _fill(
    board: Board,
    row: list[int],
    boxes: tuple[Area, ...],
    blocked: list[Area],
    edges: tuple[int, ...],
    laid: list[At],
) -> None:
    """`edges` of tiers are crossed by no body: a shelf that would begins at the edge."""
    step = board.step
    right, shelf, deepest = board.width, 0, 0
    for number in row:
        box = boxes[number]
        while shelf + box[3] - box[1] <= board.depth:
            y = -(-(shelf - box[1]) // step) * step
            x = (right - box[2]) // step * step
            if x + box[0] < 0:
                right, shelf, deepest = board.width, shelf + max(deepest, step), 0
                continue
            edge = next((each for each in edges if y < each < y + board.items[number].shapes[0].depth), None)
            if edge is not None:
                right, shelf, deepest = board.width, max(shelf + deepest, edge + box[1]), 0
                continue
            area = _moved(box, (x, y, 0))
            hit = next((each for each in blocked if _overlap(each, area)), None)
            if hit is not None:
                right = min(right - step, hit[0])
                continue
            if area[3] > board.depth:
                break
            laid[number] = (x, y, 0)
            right, deepest = area[0], max(deepest, area[3] - shelf)
            break


def _moved(box: Area, at: At) -> Area:
    return at[0] + box[0], at[1] + box[1], at[0] + box[2], at[1] + box[3]


def _overlap(one: Area, other: Area) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
