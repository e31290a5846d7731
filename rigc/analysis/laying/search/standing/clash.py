"""A board for which no layout is found -> few things that can't stand on it together: proved, or nothing is said.

Of a few things all ways are gone through in which one may stand beside the other (see `apart`); of many, their bodies alone are packed. From
what can't stand together so one thing after the other is taken out: it stays out if the rest still can't.
"""

from __future__ import annotations

from itertools import combinations

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.packing import pack
from rigc.analysis.laying.search.standing.apart import Apart

_TURNS = 6_000  # in all proofs, each a way in which two things may stand beside each other
_TURNS_EACH = 400  # in each of them
_BESIDE = 6  # so many things, the largest first, are tried with each two of those that have no room
_PACKING = 4_000  # rectangles laid down before a packing is given up


def clash(board: Board, at: tuple[At, ...]) -> tuple[int, ...]:
    """Items that are proved to have no layout by themselves, of which none can be taken away so that this is still proved; `at` is the
    layout with the fewest things in the way. Empty where nothing is proved."""
    loose = board.loose
    outside = tuple(left_out(board, at))
    left = _TURNS
    for some in _candidates(loose, outside):
        if left <= 0:
            break
        proof = Apart(loose, some)
        if proof.impossible(min(left, _TURNS_EACH)):
            return _fewest(loose, some)
        left -= proof.turns
    every = tuple(range(len(board.items)))
    return _fewest(loose, every) if _cant_stand(loose, every) else ()


def _candidates(board: Board, outside: tuple[int, ...]) -> list[tuple[int, ...]]:
    """The few things that are looked at: each that has no room alone, with one other, then with two and three of the largest."""
    size = {item: it.shapes[0].width * it.shapes[0].depth for item, it in enumerate(board.items)}
    large = sorted(size, key=lambda item: (-size[item], item))
    found: list[tuple[int, ...]] = [(item,) for item in outside]
    found += [tuple(sorted((item, other))) for item in outside for other in large if other != item]
    for more in (2, 3):
        found += [
            tuple(sorted((item, *others)))
            for item in outside
            for others in combinations([each for each in large[:_BESIDE] if each != item], more)
        ]
    return list(dict.fromkeys(found))


def _fewest(board: Board, some: tuple[int, ...]) -> tuple[int, ...]:
    left = some
    for item in sorted(some, key=lambda each: board.items[each].shapes[0].width * board.items[each].shapes[0].depth):
        rest = tuple(each for each in left if each != item)
        if rest and _cant_stand(board, rest):
            left = rest
    return left


def _cant_stand(board: Board, some: tuple[int, ...]) -> bool:
    return _by_packing(board, some) or Apart(board, some).impossible(_TURNS_EACH)


def _by_packing(board: Board, some: tuple[int, ...]) -> bool:
    """Whether the bodies of one side alone, so far apart as they must be, can't all be laid into the deck. Fixed ones count as free."""
    apart = board.apart
    for under in (False, True):
        items = [board.items[item] for item in some if board.items[item].under == under]
        pieces = tuple((item.shapes[0].width + apart, item.shapes[0].depth + apart) for item in items)
        turning = any(len(item.shapes) > 1 for item in items)
        packed = pack(pieces, board.width + apart, board.depth + apart, _PACKING, turning)
        if packed.laid is None and packed.proved:
            return True
    return False
