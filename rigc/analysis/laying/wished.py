"""Wishes and places -> by how much a place misses what the source asks for, in tenths of a millimetre."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.laying.search.board import Area, Board, Wish
from rigc.facts.leads import ONE_ROW_MM

Size = tuple[int, int]

_ONE_ROW = round(10 * ONE_ROW_MM.value)


def missed(board: Board, wish: Wish, boxes: Sequence[Area]) -> int:
    """By how much a wish is not met; `boxes` are all outlines."""
    return missed_on((board.width, board.depth), wish, boxes, [item.under for item in board.items])


def missed_on(size: Size, wish: Wish, boxes: Sequence[Area], under: Sequence[bool]) -> int:
    """The same on a deck of that width and depth, where each outline stands on it or hangs `under` it."""
    if wish.kind == "row":
        return _row(size, wish.word, boxes[wish.item])
    if wish.kind == "reach":
        return _reach(size, wish.word, boxes[wish.item])
    return _beside(wish, boxes, under)


def _row(size: Size, word: str, box: Area) -> int:
    """The front row begins in the front third of the deck, the rear row ends in the rear third and begins behind the
    front one, the middle of the middle row is in the middle third."""
    third = size[1] // 3
    _, front, _, rear = box
    if word == "front":
        return max(0, front - third)
    if word == "rear":
        return max(0, size[1] - third - rear, third - front)
    return max(0, third - (front + rear) // 2, (front + rear) // 2 - (size[1] - third))


def _reach(size: Size, word: str, box: Area) -> int:
    """Within reach of a foot: the middle in that half of the deck, and in the front row."""
    middle = (box[0] + box[2]) // 2 - size[0] // 2
    return max(0, -middle if word.startswith("right") else middle) + _row(size, "front", box)


def _beside(wish: Wish, boxes: Sequence[Area], under: Sequence[bool]) -> int:
    """Left or right: in one row; in front or behind: over a common x; with the stated gap, and nothing between."""
    here, there = boxes[wish.item], boxes[wish.other]
    if wish.word in ("left", "right"):
        one, other = (here, there) if wish.word == "left" else (there, here)
        gap, aligned = other[0] - one[2], max(0, abs(one[1] - other[1]) - _ONE_ROW)
        between = (one[2], max(one[1], other[1]), other[0], min(one[3], other[3]))
    else:
        one, other = (here, there) if wish.word == "front" else (there, here)
        gap, aligned = other[1] - one[3], max(0, max(one[0], other[0]) + 1 - min(one[2], other[2]))
        between = (max(one[0], other[0]), one[3], min(one[2], other[2]), other[1])
    short = max(0, -gap) if wish.gap is None else abs(gap - wish.gap)
    return (
        aligned
        + short
        + sum(
            _shared(between, box)
            for at, box in enumerate(boxes)
            if at not in (wish.item, wish.other) and under[at] == under[wish.item]
        )
    )


def _shared(area: Area, box: Area) -> int:
    return max(0, min(min(area[2], box[2]) - max(area[0], box[0]), min(area[3], box[3]) - max(area[1], box[1])))
