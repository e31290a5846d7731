"""A board with many things -> its parts: a few things each that are joined by leads, with nothing else free on the deck.

What a part costs at least, the same part of every layout of the whole board costs at least, too: other things only take room away.
So what is soon proved of each part says more of the whole than a solver finds that looks at all things at once.
"""

from __future__ import annotations

from rigc.analysis.laying.search.board import Board, End
from rigc.record import Record


class Part(Record):
    """The things of a part; all that stand on its board, by their numbers on the whole one; its links likewise."""

    items: tuple[int, ...]
    kept: tuple[int, ...]
    links: tuple[int, ...]
    board: Board


def parts(board: Board, size: int) -> tuple[Part, ...]:
    """The parts of so many things that are grown from each free thing along the links that weigh most; none where all would be one part."""
    free = {number for number, item in enumerate(board.items) if item.fixed is None}
    if len(free) <= size:
        return ()
    grown = dict.fromkeys(tuple(sorted(_grown(board, item, free, size))) for item in sorted(free))
    return tuple(_part(board, items) for items in grown if len(items) > 1)


def _grown(board: Board, item: int, free: set[int], size: int) -> set[int]:
    group = {item}
    by_weight = sorted(board.links, key=lambda link: -link.share)
    while len(group) < size:
        ends = ({link.start.item, link.end.item} for link in by_weight)
        more = next((new for each in ends if each & group and (new := each & free - group)), None)
        if not more:
            break
        group |= more
    return group


def _part(board: Board, items: tuple[int, ...]) -> Part:
    """Fixed things stay where they are and cost nothing."""
    kept = [number for number, item in enumerate(board.items) if number in items or item.fixed is not None]
    links = tuple(
        number
        for number, link in enumerate(board.links)
        if {link.start.item, link.end.item} <= {*kept, -1} and {link.start.item, link.end.item} & set(items)
    )

    def end(old: End) -> End:
        there: End = old if old.item < 0 else old.replace(item=kept.index(old.item))
        return there

    alone = board.replace(
        items=tuple(board.items[n] if n in items else board.items[n].replace(use=0) for n in kept),
        links=tuple(
            board.links[n].replace(start=end(board.links[n].start), end=end(board.links[n].end)) for n in links
        ),
        partings=tuple(
            each.replace(one=kept.index(each.one), other=kept.index(each.other))
            for each in board.partings
            if each.one in kept and each.other in kept
        ),
        wishes=(),
        line=0,
    )
    return Part(items, tuple(kept), links, alone)
