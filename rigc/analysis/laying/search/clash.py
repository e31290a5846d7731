"""A board for which no layout is found -> few things that can't stand on it together, and how much larger it must be to take all.

That things can't stand together is proved, by the solver where it is installed, else by packing their bodies alone; where neither proves it
nothing is said. From what can't stand together one thing after the other is taken out: it stays out if the rest still can't.
"""

from __future__ import annotations

from collections.abc import Callable

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import as_it_is
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.packing import pack
from rigc.analysis.laying.search.shelves import on_shelves
from rigc.analysis.laying.search.solver.model import is_installed, proof
from rigc.record import Record

_WORK = 1.0  # of the solver for each proof, about a second
_PROOFS = 24  # so many of them at most: what can't stand together then may be more than the fewest
_PACKING = 4_000  # rectangles laid down before a packing is given up
_MOST = 400  # mm by which a deck is thought larger at most
_FINE = 10  # tenths of a millimetre between the largest that was too small and the smallest that does


class Tight(Record):
    """Why there is no room: the items that can't stand together, and the deck that would do; each may be unknown."""

    clash: tuple[int, ...]
    larger: Larger | None


class Larger(Record):
    """A deck of that width and depth, in tenths of a millimetre, on which all stood when it was tried."""

    width: int
    depth: int


def tightness(board: Board, at: tuple[At, ...], effort: int) -> Tight:
    """Why a board has no layout, of which the layout `at` is the best that was found; `effort` is spent on each larger deck that is tried."""
    return Tight(clash(board), larger(board, at, effort))


def clash(board: Board) -> tuple[int, ...]:
    """Items that are proved to have no layout by themselves; empty where nothing is proved. Where there are few things, none of these can be
    taken away so that the rest still has none."""
    impossible = _by_solver if is_installed() else _by_packing
    left = tuple(range(len(board.items)))
    if not impossible(board):
        return ()
    by_size = sorted(left, key=lambda item: board.items[item].shapes[0].width * board.items[item].shapes[0].depth)
    for item in by_size[:_PROOFS]:
        rest = tuple(each for each in left if each != item)
        if impossible(of_some(board, rest)):
            left = rest
    return left


def larger(board: Board, begun: tuple[At, ...], effort: int) -> Larger | None:
    """The deck with the least more area that is deeper or wider and takes all, found by halves with so many steps for each try. Each try betters
    the last one's layout, at first the one that was `begun`; once all stood, the layout in which they did on the smallest deck."""
    found = [
        each
        for each in (
            _least(lambda more: board.replace(depth=board.depth + more), begun, effort),
            _least(lambda more: board.replace(width=board.width + more), begun, effort),
        )
        if each is not None
    ]
    return min(found, key=lambda each: each.width * each.depth, default=None)


def of_some(board: Board, items: tuple[int, ...]) -> Board:
    """The board with these items alone, and nothing that joins them or is wished."""
    partings = tuple(
        each.replace(one=items.index(each.one), other=items.index(each.other))
        for each in board.partings
        if each.one in items and each.other in items
    )
    kept = tuple(board.items[item] for item in items)
    return board.replace(items=kept, links=(), wishes=(), partings=partings)  # type: ignore[no-any-return]


def _least(with_more: Callable[[int], Board], begun: tuple[At, ...], effort: int) -> Larger | None:
    low, high, best = 0, 10 * _MOST, None
    step = 160
    while step < high and best is None:  # first by doubling, because a little is likelier than much
        stands, begun = _stands(with_more(step), begun, effort)
        if stands:
            best, high = with_more(step), step
        else:
            low, step = step, 2 * step
    while best is not None and high - low > _FINE:
        middle = (low + high) // 20 * 10
        stands, at = _stands(with_more(middle), begun, effort)
        if stands:
            best, high, begun = with_more(middle), middle, at
        else:
            low = middle
    return None if best is None else Larger(best.width, best.depth)


def _stands(board: Board, begun: tuple[At, ...], effort: int) -> tuple[bool, tuple[At, ...]]:
    """Whether all do, and in what layout: by shelves if these do, which is quick, else by search."""
    deep_first = sorted(range(len(board.items)), key=lambda item: (-board.items[item].shapes[0].depth, item))
    order = [item for item in deep_first if board.items[item].fixed is None]
    at = on_shelves(board, order, [(*(item.fixed or (0, 0)), 0) for item in board.items])
    if not as_it_is(Layout(board, at)).hard:
        return True, tuple(at)
    found = KNOWN.search(board, effort, begun=begun)
    return not found.hard, found.at


def _by_solver(board: Board) -> bool:
    return proof(board, _WORK, costs=False).impossible


def _by_packing(board: Board) -> bool:
    """Whether the bodies of one side alone, so far apart as they must be, can't all be laid into the deck. Fixed ones count as free."""
    apart = board.apart
    for under in (False, True):
        items = [item for item in board.items if item.under == under]
        pieces = tuple((item.shapes[0].width + apart, item.shapes[0].depth + apart) for item in items)
        turning = any(len(item.shapes) > 1 for item in items)
        packed = pack(pieces, board.width + apart, board.depth + apart, _PACKING, turning)
        if packed.laid is None and packed.proved:
            return True
    return False
