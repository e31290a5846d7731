"""Things in certain turns, and a lead between two of them -> the ways in which it may run: what must hold for each, and what it costs at least.

Over the deck it runs by one bend or the other, below it through drop lines which nothing covers; by which is asked last, because it hardly changes
what it costs. Ways round what hangs are not thought of.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from rigc.analysis.laying.search.board import Board, End, Link, Spot
from rigc.analysis.laying.search.conflicts import Solid
from rigc.analysis.laying.search.lengths import ROW, finished, under_route
from rigc.analysis.laying.search.rows.differences import Apart, Either, Kept, Least, far
from rigc.record import Record

_HUGE = 1 << 40


class Way(Record):
    """How a lead may run, by its `number` among all ways of the lead: what holds then, and of which sets one must; over the deck, or below it
    by the drop lines of its two ends (none: that end is below already; several: the nearest that is free). `parts` are the ways that it may be
    in detail."""

    number: int
    over: bool
    holds: tuple[Apart, ...] = ()
    one_of: tuple[Either, ...] = ()
    down: tuple[tuple[int, ...], tuple[int, ...]] = ((), ())
    parts: tuple[Way, ...] = ()


class LeadWays:
    """The ways of one lead. What each costs at least is kept by the differences that it hangs on: a search asks the same again and again."""

    def __init__(self, board: Board, number: int, shapes: Sequence[int], solids: Sequence[Solid]) -> None:
        self.board, self.link, self.solids = board, board.links[number], solids
        self._deck = len(board.items)
        starts = (self.link.start, self.link.end)
        self.ends = tuple(each.item if each.item >= 0 else self._deck for each in starts)
        (start, high), (end, its_high) = (_plug(board, each, shapes) for each in starts)
        self.spots = start, end
        self._high = abs(high - its_high)
        tops = [each.item >= 0 and not board.items[each.item].under for each in starts]
        self._passage = under_route(board, high, tops[0]) + under_route(board, its_high, tops[1])
        self._back = _back(self.link)
        self._count = 0
        self._known: dict[tuple[int, ...], int] = {}
        self.ways = tuple(self._all(tops))

    def least(self, way: Way | None, kept: Kept) -> int:
        """What it costs at least that way, or by any of its ways."""
        (one, other), deck, (across, along) = self.ends, self._deck, kept
        x, its_x, y, its_y, ground = across[one], across[other], along[one], along[other], along[deck]
        key = (
            -1 if way is None else way.number,
            x[other],
            its_x[one],
            y[other],
            its_y[one],
            y[deck],
            ground[one],
            its_y[deck],
            ground[other],
        )
        known = self._known.get(key)
        if known is None:
            known = self._known[key] = min(
                (self._least(each, across, along) for each in (self.ways if way is None else (way,))), default=_HUGE
            )
        return known

    def _least(self, way: Way, across: Least, along: Least) -> int:
        one, other = self.ends
        (x1, y1), (x2, y2) = self.spots
        x, y = far(across, one, other, x2 - x1), far(along, one, other, y2 - y1)
        if way.over:
            if along[one][other] > ROW or along[other][one] > ROW:
                return _HUGE
            route = x + y + self._high
        else:
            lines, its_lines = way.down
            down = min((far(along, one, self._deck, line - y1) for line in lines), default=0)
            its_down = min((far(along, other, self._deck, line - y2) for line in its_lines), default=0)
            between = abs(lines[0] - its_lines[0]) if len(lines) == len(its_lines) == 1 else 0
            route = self._passage + x + max(y, down + between + its_down)
        cost = finished(self.link.signal, route, self.link.more) * self.link.share
        if self._back and across[one][other] > 0:
            cost += self._back * across[one][other] // 100
        return cost

    def _all(self, tops: list[bool]) -> Iterator[Way]:
        link, board = self.link, self.board
        if all(tops) and link.run != "under":
            yield from (self._over(left) for left in (0, 1))
        if link.run != "over":
            lines = [board.lines if top else () for top in tops]
            yield self._under((lines[0], lines[1]))

    def _numbered(self) -> int:
        self._count += 1
        return self._count

    def _tops(self) -> list[int]:
        return [item for item, it in enumerate(self.board.items) if not it.under]

    def _over(self, left: int) -> Way:
        """Over the deck, with that of both at the left, and nothing reaching between them."""
        one, other = self.ends
        first, second = self.ends[left], self.ends[1 - left]
        solids = self.solids
        row = (1, one, other, -ROW), (1, other, one, -ROW), (0, first, second, solids[first].width)
        aside: list[Either] = []
        for item in self._tops():
            if item in self.ends:
                continue
            aside.append(
                (
                    ((0, second, item, 0),),
                    ((0, item, first, solids[item].width - solids[first].width),),
                    ((1, first, item, solids[first].depth),),
                    ((1, second, item, solids[second].depth),),
                    ((1, item, first, solids[item].depth),),
                    ((1, item, second, solids[item].depth),),
                )
            )
        bends = tuple(
            Way(self._numbered(), True, (), tuple(each for item in self._tops() for each in self._clear(turn, item)))
            for turn in (0, 1)
        )
        return Way(self._numbered(), True, row, tuple(aside), parts=bends)

    def _clear(self, turn: int, item: int) -> Iterator[Either]:
        """A body is on neither stretch of a way with one bend: that goes along y at the x of one end, and along x at the y of the other."""
        solid = self.solids[item]
        sizes = solid.width, solid.depth
        for axis, at in ((0, turn), (1, 1 - turn)):
            its, size = self.spots[at][axis], sizes[axis]
            end = self.ends[at]
            across, long = 1 - axis, sizes[1 - axis]
            spots = [(each, spot[across]) for each, spot in zip(self.ends, self.spots, strict=True)]
            yield (
                ((axis, end, item, its),),
                ((axis, item, end, size - its),),
                tuple((across, each, item, spot) for each, spot in spots),
                tuple((across, item, each, long - spot) for each, spot in spots),
            )

    def _under(self, down: tuple[tuple[int, ...], tuple[int, ...]]) -> Way:
        """Below the deck, by any of these drop lines."""
        lines = list(product(*(each or (None,) for each in down)))
        parts = tuple(self._through(pair) for pair in lines)
        return parts[0] if len(parts) == 1 else Way(self._numbered(), False, down=down, parts=parts)

    def _through(self, lines: tuple[int | None, ...]) -> Way:
        """Below the deck, through these drop lines, which no body covers there."""
        free: list[Either] = []
        for end, (x, _), line in zip(self.ends, self.spots, lines, strict=True):
            if line is None:
                continue
            for item in self._tops():
                solid = self.solids[item]
                free.append(
                    (
                        ((0, end, item, x),),
                        ((0, item, end, solid.width - x),),
                        ((1, self._deck, item, line),),
                        ((1, item, self._deck, solid.depth - line),),
                    )
                )
        down = [() if line is None else (line,) for line in lines]
        return Way(self._numbered(), False, (), tuple(free), (down[0], down[1]))


def _plug(board: Board, end: End, shapes: Sequence[int]) -> tuple[Spot, int]:
    if end.item < 0:
        return (end.x, end.y), 0
    item = board.items[end.item]
    plug = item.shapes[shapes[end.item]].sockets[end.socket]
    return (plug.x + plug.dx * plug.exit, plug.y + plug.dy * plug.exit), 0 if item.under else plug.above


def _back(link: Link) -> int:
    """What each length costs that a lead runs from left to right, in hundredths of percent."""
    return link.back * link.share if link.onward and min(link.start.item, link.end.item) >= 0 else 0
