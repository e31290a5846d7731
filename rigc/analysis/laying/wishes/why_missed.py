"""Wishes that chosen places of a deck miss -> what stands where each would be met, or why no move would meet it."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.kept_free import kept_free
from rigc.analysis.deck.placement import Outline
from rigc.analysis.deck.unplaced import as_stated
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.room_in_case import TooTall, too_tall
from rigc.analysis.laying.search.board import Board, Wish
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.wishes.missed_wishes import MissedWish
from rigc.analysis.laying.wishes.place_wishes import PlaceWish
from rigc.analysis.laying.wishes.wished import ONE_ROW, missed
from rigc.analysis.laying.wishes.wishes_of_rig import wishes_for
from rigc.analysis.leads.leads import Leads
from rigc.model.deck import Deck, Hint
from rigc.model.rig import Rig
from rigc.model.things import Thing

_LOOKED = 100  # places are looked at on a grid of 10 mm
_MUCH = 10**9
_OPPOSITE = {"left": "right", "right": "left", "front": "rear", "rear": "front"}
_WIDEST = 3_000  # a gap that plugs ask for is looked for up to here, in tenths of a millimetre


def why_missed(rig: Rig, deck: Deck, leads: Leads, open_ones: list[PlaceWish]) -> dict[Hint, MissedWish]:
    """The reasons for which wishes about things of a deck are missed, by the wishes."""
    free = tuple(
        thing for name, place in rig.places.items() if place.chosen and isinstance(thing := rig.things[name], Thing)
    )
    board = board_of(as_stated(rig), deck, leads, free)
    names = tuple(item.name for item in board.items)
    under = frozenset(item.name for item in board.items if item.under)
    said = dict(wishes_for(rig, deck, names, under, frozenset(names)))
    layout = Layout(board, [_at(rig, board, number) for number in range(len(names))])
    return {
        each.hint: _why(rig, layout, each, said)
        for each in open_ones
        if each.deck is not None and each.deck.name == deck.name
    }


def _at(rig: Rig, board: Board, number: int) -> At:
    item = board.items[number]
    place = rig.places[item.name]
    turns = [shape.turned for shape in item.shapes]
    return round(10 * place.x_mm), round(10 * place.y_mm), turns.index(place.turned)


def _why(rig: Rig, layout: Layout, each: PlaceWish, said: dict[Hint, Wish]) -> MissedWish:
    board, wish = layout.board, said[each.hint]
    found = best_move(layout, wish)
    if found is None:
        return MissedWish(each, False, least_gap=_least_gap(layout, wish))
    item, at = found
    if (lacks := _too_tall(rig, layout, each, item, at)) is not None:
        return MissedWish(each, True, too_tall=(board.items[item].name, lacks))
    there = [at if number == item else here for number, here in enumerate(layout.at)]
    against = tuple(
        hint
        for hint, other in said.items()
        if other != wish and missed(board, other, there) > missed(board, other, layout.at)
    )
    way = tuple(board.items[other].name for other in in_the_way(layout, item, at))
    return MissedWish(each, True, way, against, kept_free=_kept_free(rig, layout, each, item, at))


def _too_tall(rig: Rig, layout: Layout, each: PlaceWish, item: int, at: At) -> TooTall | None:
    it, thing = layout.board.items[item], rig.things[layout.board.items[item].name]
    if not it.rearmost or each.deck is None or not isinstance(thing, Thing):
        return None
    rear = at[1] + it.shapes[at[2]].depth
    return too_tall(rig, each.deck, thing, layout.ground.lift(item, at) / 10, rear / 10)


def _kept_free(rig: Rig, layout: Layout, each: PlaceWish, item: int, at: At) -> tuple[str, ...]:
    """The parts of the deck that are kept free and into which an item at a place would reach; tiers are grounds of their own."""
    if each.deck is None or not layout.alone(item, at):
        return ()
    it, (left, front, right, rear) = layout.board.items[item], layout.ground.box(item, at)
    body = Outline(
        it.name, left / 10, front / 10, (right - left) / 10, (rear - front) / 10, None, 0.0, it.under, each.deck.name
    )
    tiers = {tier.name for tier in each.deck.tiers}
    rooms = (room for room in kept_free(rig, each.deck, body) if room.key not in tiers)
    return tuple(room.named for room in rooms if min(body.area.overlap(room.room)) > 0)


def best_move(layout: Layout, wish: Wish) -> tuple[int, At] | None:
    """The move of one thing of a wish that meets it, with the least in the way there; None where no such move does, or what the wish names
    is in its own way."""
    board, best = layout.board, _MUCH
    found: tuple[int, At] | None = None
    for item in (*wish.items, *wish.others):
        if board.items[item].fixed is not None:
            continue
        rest = set(layout.beside(item)) & {*wish.items, *wish.others}
        for shape, solid in enumerate(layout.solids[item]):
            for x, y in _spots(layout, wish, item, (solid.width, solid.depth)):
                there = list(layout.at)
                there[item] = (x, y, shape)
                if missed(board, wish, there) or any(_meet(layout, item, there[item], other) for other in rest):
                    continue
                if (fault := layout.fault_at(item, there[item])) < best:
                    best, found = fault, (item, there[item])
    return found


def _meet(layout: Layout, item: int, at: At, other: int) -> int:
    """By how much an item at a place would be in the way of another."""
    return layout.between(item, at, other, layout.at[other])


def _least_gap(layout: Layout, wish: Wish) -> int | None:
    """The least gap with which two things can stand beside each other as is wished, in tenths of a millimetre, where that is more than
    the one that is asked for: bodies, plugs and feet need it."""
    if wish.kind != "beside" or wish.amount is None:
        return None
    item, other = wish.items[0], wish.others[0]
    pairs = [(item, other, wish.word)] if layout.board.items[item].fixed is None else []
    if layout.board.items[other].fixed is None:
        pairs.append((other, item, _OPPOSITE[wish.word]))
    step = layout.board.step
    for gap in (wish.amount, *range(step * (wish.amount // step + 1), _WIDEST, step)):
        if any(_stands_beside(layout, *pair, gap) for pair in pairs):
            return gap if gap > wish.amount else None
    return None


def _stands_beside(layout: Layout, item: int, other: int, side: str, gap: int) -> bool:
    """Whether an item, turned somehow, can stand to that side of another with just this gap, and neither is in the way of the other."""
    left, front, right, rear = layout.box(other)
    for shape, solid in enumerate(layout.solids[item]):
        if side in ("left", "right"):
            x = left - solid.width - gap if side == "left" else right + gap
            spots = [(x, y) for y in range(front - ONE_ROW, front + ONE_ROW + 1, layout.board.step)]
        else:
            y = front - solid.depth - gap if side == "front" else rear + gap
            spots = [(x, y) for x in range(left - solid.width + 1, right, layout.board.step)]
        if not all(_meet(layout, item, (*spot, shape), other) for spot in spots):
            return True
    return False


def _spots(layout: Layout, wish: Wish, item: int, size: tuple[int, int]) -> Iterator[tuple[int, int]]:
    """Corners of a thing of that size on a coarse grid, and those in line with, beside or mirroring what the wish names."""
    board, (width, depth), gap = layout.board, size, wish.amount or 0
    step = max(_LOOKED, board.step)
    xs, ys = (
        {*range(0, board.width - width + 1, step), (board.width - width) // 2},
        set(range(0, board.depth - depth + 1, step)),
    )
    for other in {*wish.items, *wish.others} - {item}:
        left, front, right, rear = layout.box(other)
        xs |= {left, board.width - right, left - width - gap, right + gap}
        ys |= {front, front - depth - gap, rear + gap}
    for x in sorted(xs):
        if 0 <= x <= board.width - width:
            yield from ((x, y) for y in sorted(ys) if 0 <= y <= board.depth - depth)


def in_the_way(layout: Layout, item: int, at: At) -> tuple[int, ...]:
    """What would be in an item's way at a place."""
    return tuple(other for other in layout.beside(item) if layout.between(item, at, other, layout.at[other]))
