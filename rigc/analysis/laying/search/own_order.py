"""A board -> the same board with its things, jacks, leads and wishes in an order of their own: what is found on it does not hang on the order of the
source, nor on what things are called.

Things are told apart by what they are, then by what their leads, wishes and partings join them with, again and again until that tells no more of them
apart (colour refinement: Weisfeiler and Leman 1968; from memory). Only those that are alike in all of it go by their names. Sound gives the order: first what it
comes from, then, as deep as it goes, what it goes to; what has no sound follows, the largest first.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import TYPE_CHECKING, Any

from rigc.analysis.laying.search.board import Board, End, Item, Link, Parting, Shape, Wish
from rigc.record import Record

if TYPE_CHECKING:  # what was found before is told without it
    from rigc.analysis.laying.search.ground import At

_Key = Any  # what can be sorted
_Sockets = tuple[int, ...]  # of a thing: the number that each of its jacks has in the other order


class Ordered(Record):
    """A board in its own order; `items` are the numbers that its things have on the other one."""

    board: Board
    items: tuple[int, ...]

    def from_source(self, at: Sequence[At]) -> tuple[At, ...]:
        """A layout of the other board as one of this."""
        return tuple(at[item] for item in self.items)

    def to_source(self, at: Sequence[At]) -> tuple[At, ...]:
        """A layout of this board as one of the other."""
        return tuple(place for _, place in sorted(zip(self.items, at, strict=True)))


def in_own_order(board: Board) -> Ordered:
    """The same for every order in which the same things, jacks, leads, wishes and partings may stand."""
    jacks = [_jacks_in_order(item) for item in board.items]
    items = [_with_jacks(item, order) for item, order in zip(board.items, jacks, strict=True)]
    links = [link.replace(start=_plugged(link.start, jacks), end=_plugged(link.end, jacks)) for link in board.links]
    board = board.replace(items=tuple(items), links=tuple(links))
    order = tuple(_as_sound_goes(board, _told_apart(board)))
    number = {item: place for place, item in enumerate(order)} | {-1: -1}
    links = [link.replace(start=_moved(link.start, number), end=_moved(link.end, number)) for link in board.links]
    wishes = [
        wish.replace(
            items=tuple(map(number.__getitem__, wish.items)), others=tuple(map(number.__getitem__, wish.others))
        )
        for wish in board.wishes
    ]
    partings = [each.replace(one=one, other=other) for each in board.partings for one, other in (_both(each, number),)]
    ordered: Board = board.replace(
        items=tuple(board.items[item] for item in order),
        links=tuple(sorted(links, key=_of_link)),
        wishes=tuple(sorted(wishes, key=repr)),
        partings=tuple(sorted(partings, key=repr)),
    )
    return Ordered(ordered, order)


def nameless(board: Board) -> Board:
    """Without what no search reads: names of things and jacks, and numbers of leads."""
    bare: Board = board.replace(
        items=tuple(_nameless_item(item) for item in board.items),
        links=tuple(link.replace(mark="") for link in board.links),
    )
    return bare


def _nameless_item(item: Item) -> Item:
    bare: Item = item.replace(name="", shapes=tuple(map(_nameless_shape, item.shapes)))
    return bare


def _nameless_shape(shape: Shape) -> Shape:
    bare: Shape = shape.replace(sockets=tuple(socket.replace(jack="") for socket in shape.sockets))
    return bare


def _both(parting: Parting, number: dict[int, int]) -> tuple[int, int]:
    """Its two things, whichever is named first."""
    one, other = sorted((number[parting.one], number[parting.other]))
    return one, other


def _jacks_in_order(item: Item) -> _Sockets:
    """The numbers of a thing's jacks, from left to right and from front to rear as it stands unturned."""
    sockets = item.shapes[0].sockets
    return tuple(sorted(range(len(sockets)), key=lambda number: repr(sockets[number])))


def _with_jacks(item: Item, order: _Sockets) -> Item:
    shapes = (shape.replace(sockets=tuple(shape.sockets[number] for number in order)) for shape in item.shapes)
    made: Item = item.replace(shapes=tuple(shapes))
    return made


def _plugged(end: End, jacks: list[_Sockets]) -> End:
    made: End = end if end.item < 0 else end.replace(socket=jacks[end.item].index(end.socket))
    return made


def _moved(end: End, number: dict[int, int]) -> End:
    made: End = end.replace(item=number[end.item])
    return made


def _of_link(link: Link) -> _Key:
    """Leads with sound first, in the order of what they join."""
    ends = ((end.item, end.socket, end.x, end.y) for end in (link.start, link.end))
    return link.signal != "audio", *ends, repr(link.replace(mark=""))


def _told_apart(board: Board) -> list[int]:
    """A rank of each thing that no other has: those that are larger first, then those with more leads."""
    leads = [0] * len(board.items)
    for link in board.links:
        for end in (link.start, link.end):
            if end.item >= 0:
                leads[end.item] += 1
    ranks = _ranked(
        (_size(item), -leads[number], repr(_nameless_item(item))) for number, item in enumerate(board.items)
    )
    joins = [*map(_link_joins, board.links), *map(_wish_joins, board.wishes), *map(_parting_joins, board.partings)]
    while True:
        ranks = _refined(ranks, joins)
        alike = min((rank for rank, many in Counter(ranks).items() if many > 1), default=None)
        if alike is None:
            return ranks
        names = (item.name if rank == alike else "" for item, rank in zip(board.items, ranks, strict=True))
        ranks = _ranked(zip(ranks, names, strict=True))


def _size(item: Item) -> tuple[int, int]:
    shape = item.shapes[0]
    return -shape.width * shape.depth, -max(shape.width, shape.depth)


_Joins = tuple[str, tuple[tuple[int, int], ...]]
"""What joins things, without them, and the things, each with the part that it has in it."""


def _link_joins(link: Link) -> _Joins:
    ends = tuple((end.item, part) for part, end in enumerate((link.start, link.end)) if end.item >= 0)
    bare = link.replace(mark="", start=_bare(link.start), end=_bare(link.end))
    return repr(bare), ends


def _bare(end: End) -> End:
    made: End = end if end.item < 0 else end.replace(item=0)
    return made


def _wish_joins(wish: Wish) -> _Joins:
    named = (*wish.items, *wish.others)
    return repr(wish.replace(items=(len(wish.items),), others=(len(wish.others),))), tuple(
        zip(named, range(len(named)), strict=True)
    )


def _parting_joins(parting: Parting) -> _Joins:
    return f"parting {parting.gap}", ((parting.one, 0), (parting.other, 0))


def _refined(ranks: list[int], joins: list[_Joins]) -> list[int]:
    """Things of one rank come apart by what they are joined with, until that tells no more of them apart."""
    while True:
        beside: list[list[tuple[str, int, list[tuple[int, int]]]]] = [[] for _ in ranks]
        for what, things in joins:
            whole = sorted((part, ranks[item]) for item, part in things)
            for item, part in things:
                beside[item].append((what, part, whole))
        finer = _ranked((rank, sorted(beside[item])) for item, rank in enumerate(ranks))
        if finer == ranks:
            return ranks
        ranks = finer


def _ranked(keys: Iterable[_Key]) -> list[int]:
    """For each key how many other ones lie before it."""
    every = list(keys)
    first: list[_Key] = [key for key, _ in groupby(sorted(every))]
    return [bisect_left(first, key) for key in every]


def _as_sound_goes(board: Board, ranks: list[int]) -> list[int]:
    """The things in their order, those of one place by their ranks."""
    by_rank = sorted(range(len(ranks)), key=ranks.__getitem__)
    goes_to: dict[int, set[int]] = {}
    comes: set[int] = set()
    for link in board.links:
        if link.signal == "audio":
            goes_to.setdefault(link.start.item, set()).add(link.end.item)
            comes.update((link.end.item,) if link.start.item >= 0 else ())
    sound = set(goes_to).union(*goes_to.values())
    found: dict[int, None] = {}
    for first in sorted(by_rank, key=lambda item: (item not in sound, item in comes)):
        waiting = [first]
        while waiting:
            item = waiting.pop()
            if item >= 0 and item not in found:
                found[item] = None
                waiting += sorted(
                    goes_to.get(item, ()), key=lambda each: ranks[each] if each >= 0 else -1, reverse=True
                )
    return list(found)
