"""A rig and the decks of its stock -> which of them take what stands on it, what is left over, and the smallest rectangle that would."""

from __future__ import annotations

from rigc.analysis.deck.unplaced import on_deck
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.search.board import Board, Item
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.packing import least_depth, pack
from rigc.analysis.laying.search.safe_boxes import safe_boxes
from rigc.analysis.leads.leads import Leads
from rigc.model.deck import Deck
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.record import Record

_PACKING = 4_000  # rectangles laid down before a packing is given up
_PLACING = 6_000  # steps of search where boxes do not pack
_GRID = 10  # the smallest rectangle is sought in steps of a millimetre in depth, of ten in width


class DeckFit(Record):
    """Whether a deck takes everything: `left_out` names what it does not, with what that lacks in tenths of a millimetre.

    `free_mm2` is what no body covers of its top. `below` is what would hang below it.
    """

    deck: str
    width_mm: float
    depth_mm: float
    left_out: tuple[tuple[str, int], ...]
    free_mm2: float
    below: tuple[str, ...]


class Smallest(Record):
    """The smallest rectangle found, in tenths of a millimetre, and where all stand on it: name, x, y, and whether below."""

    width: int
    depth: int
    at: tuple[tuple[str, int, int, bool], ...]


class Fit(Record):
    """All decks in the order of the source, the smallest rectangle (None: nothing to place), and things without a body."""

    decks: tuple[DeckFit, ...]
    smallest: Smallest | None
    unsized: tuple[str, ...]


def fit(rig: Rig, leads: Leads) -> Fit:
    """Tries every deck that has a size."""
    things = tuple(thing for thing in on_deck(rig) if thing.width_mm is not None and thing.depth_mm is not None)
    unsized = tuple(thing.name for thing in on_deck(rig) if thing not in things)
    if not things:
        return Fit((), None, unsized)
    bare: Rig = rig.replace(places={}, hints=(), reserved_rooms=())
    decks = [deck for deck in rig.decks.values() if deck.width_mm is not None and deck.depth_mm is not None]
    model = rig.deck if rig.deck in decks else next(iter(decks), _plain(rig))
    return Fit(
        tuple(_deck_fit(deck, _as_stated(rig, board_of(bare, deck, leads, things))) for deck in decks),
        _smallest(_as_stated(rig, board_of(bare, model, leads, things))),
        unsized,
    )


def _plain(rig: Rig) -> Deck:
    """Where no deck is known, only that there is one: what could hang below is reckoned to stand on top."""
    side = Fact(1000.0, "1000 mm", rig.end)
    return Deck("deck", "", rig.end, width_mm=side, depth_mm=side)


def _as_stated(rig: Rig, board: Board) -> Board:
    """What the source puts on top or below stays there."""
    items = tuple(
        item.replace(under=rig.places[item.name].under)
        if item.name in rig.places and not rig.places[item.name].chosen
        else item
        for item in board.items
    )
    return board.replace(items=items)  # type: ignore[no-any-return]


def _deck_fit(deck: Deck, board: Board) -> DeckFit:
    assert deck.width_mm is not None and deck.depth_mm is not None
    lacking: dict[int, int] = {}
    if board.kept_free or board.tiers or not all(_packs(board, under) for under in (False, True)):
        lacking = left_out(board, KNOWN.search(board, _PLACING).at)
    covered = sum(
        item.shapes[0].width * item.shapes[0].depth / 100
        for number, item in enumerate(board.items)
        if not item.under and number not in lacking
    )
    return DeckFit(
        deck.name,
        deck.width_mm.value,
        deck.depth_mm.value,
        tuple((board.items[number].name, short) for number, short in lacking.items()),
        deck.width_mm.value * deck.depth_mm.value - covered,
        tuple(item.name for item in board.items if item.under),
    )


def _packs(board: Board, under: bool) -> bool:
    pieces = _pieces(board, _side(board, under))
    return pack(pieces, board.width // _GRID, board.depth // _GRID, _PACKING).laid is not None


def _side(board: Board, under: bool) -> tuple[Item, ...]:
    return tuple(item for item in board.items if item.under == under)


def _pieces(board: Board, items: tuple[Item, ...]) -> tuple[tuple[int, int], ...]:
    """The boxes in whole millimetres, part ones counted as whole."""
    return tuple((-(-(box[2] - box[0]) // _GRID), -(-(box[3] - box[1]) // _GRID)) for box in safe_boxes(board, items))


def _smallest(board: Board) -> Smallest | None:
    """Of the least depths for all widths the one with the least area that also takes what hangs below."""
    tops, hanging = _side(board, False), _side(board, True)
    pieces, below = _pieces(board, tops), _pieces(board, hanging)
    best: Smallest | None = None
    widest = max((piece[0] for piece in (*pieces, *below)), default=0)
    for width in range(-(-widest // 10) * 10, sum(piece[0] for piece in pieces) + 10, 10):
        found = least_depth(pieces, width, _PACKING // 4)
        if found is None or found.laid is None:
            continue
        depth = max((y + pieces[number][1] for number, _, y, _ in found.laid), default=0)
        if best is not None and width * depth * _GRID * _GRID >= best.width * best.depth:
            continue
        hung = pack(below, width, depth, _PACKING)
        if hung.laid is not None:
            at = (*_corners(board, tops, found.laid), *_corners(board, hanging, hung.laid))
            best = Smallest(width * _GRID, depth * _GRID, at)
    return best


def _corners(
    board: Board, items: tuple[Item, ...], laid: tuple[tuple[int, int, int, int], ...]
) -> tuple[tuple[str, int, int, bool], ...]:
    boxes = safe_boxes(board, items)
    return tuple(
        (items[number].name, x * _GRID - boxes[number][0], y * _GRID - boxes[number][1], items[number].under)
        for number, x, y, _ in laid
    )
