"""A board with few open things -> its best layout, or nearly: for every two things it is settled on which side of each other they stand, and for every
lead how it runs; where they stand follows from that.

What is settled is a set of differences that corners keep to, on each axis: the longest way from each corner to each other (and to the deck's) tells
what is no more possible and what each lead costs at least. What has one way left is settled at once; else every way is tried, the cheapest first,
and what must cost more than the best layout is left out. One way is followed for a while, then another of those that wait; and all that once more
with the questions in another order, because which order finds the best soon is luck. Ways round what hangs, wishes, balance and tapes are not
thought of: a layout counts as the rules judge it. So this is no proof.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from rigc.analysis.laying.search.board import Board, End, Link, Spot
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import ROW, finished, under_route
from rigc.record import Record

Apart = tuple[int, int, int, int]
"""On an axis (0: x, 1: y) the second corner is at least so much more than the first; the number after the last item is the deck's own corner."""
Either = tuple[tuple[Apart, ...], ...]
"""One of these sets holds."""
Least = list[list[int]]
"""By how much each corner is at least more than each other, on one axis."""
_NEVER = -(10**6)
_LONG = 50  # branches, until something else is gone on with
_ASKED = ((2, 3), (2, 1))  # of so many leads and pairs the ways are compared before one is asked, in each order
_PLACES = 60  # so many times at most a thing is set down for what is settled
_EACH = 1_100  # ways that are compared for the square of each open thing, or fewer of them where that takes longer
_LIGHT, _HEAVY = 240, 480  # numbers that are looked at for one of these; of more too few are compared to find anything


def comparisons(board: Board) -> int:
    """How many ways are worth comparing; 0 on a board with so many things, leads and drop lines that one takes long."""
    free = sum(item.fixed is None for item in board.items)
    ways = len(board.links) * (2 + max(1, len(board.lines)) ** 2)
    looked_at = 2 * (len(board.items) + 1) ** 2 + 6 * ways
    return _EACH * free**2 * _LIGHT // max(_LIGHT, looked_at) if looked_at <= _HEAVY and free > 2 else 0


class _Way(Record):
    """How a lead may run: what holds then, and of which sets one must; over the deck by which `bends`, or below it through which lines (None: that
    end is below already)."""

    over: bool
    holds: tuple[Apart, ...] = ()
    one_of: tuple[Either, ...] = ()
    down: tuple[int | None, int | None] = (None, None)
    bends: tuple[_Way, ...] = ()


class _Lead(Record):
    """A link by its two corners, and where its plugs are seen from there; how high the one is over the other, what going below costs, and what each
    length from left to right."""

    link: Link
    ends: tuple[int, int]
    spots: tuple[Spot, Spot]
    high: int
    passage: int
    back: int
    ways: tuple[_Way, ...] = ()


Branch = tuple[int, tuple[Least, Least], tuple[_Way | None, ...], tuple[Either, ...]]
"""What it costs at least, what is kept to on both axes, how each lead runs (None: open), and the sets that are
open still."""


class Sides:
    """Betters what is `found` of one board, with all things in the turns that they have there."""

    def __init__(self, room: FreeRoom, found: Found) -> None:
        self.board, self.ground, self.found = room.board, room.ground, found
        self.room, self._deck = room, len(room.board.items)
        self._shapes = [at[2] for at in found.at]
        self._solids = [solids[shape] for solids, shape in zip(self.ground.solids, self._shapes, strict=True)]
        self._always = tuple(self._all_apart())
        self._leads = [self._lead(number) for number in range(len(self.board.links))]
        self._compared = self._places = 0
        self._asked_leads, self._asked_pairs = _ASKED[0]

    def run(self, most: int) -> Iterator[int]:
        """Compares so many ways at most, in all orders; each time how many it were."""
        for number, (self._asked_leads, self._asked_pairs) in enumerate(_ASKED, start=1):
            end = most * number // len(_ASKED)
            ended = True
            for compared in self._in_order():
                yield compared
                ended = self._compared < end
                if not ended:
                    break
            if ended:  # no way is left
                return

    def _in_order(self) -> Iterator[int]:
        """Goes on until no way is left."""
        begun = self._at_first()
        waiting: list[Branch] = [] if begun is None else [(0, begun, (None,) * len(self._leads), self._always)]
        number = 0
        while waiting:
            least, kept, settled, asked = waiting.pop()
            if least >= self._most():
                continue
            before = self._compared
            self._compared += 1
            waiting += reversed(self._asked(kept, settled, asked))
            yield self._compared - before
            number += 1
            if number % _LONG == 0 and waiting:
                waiting.append(waiting.pop(_elsewhere(waiting, number // _LONG % 3)))

    def _most(self) -> int:
        """What costs so much is no better than what is found."""
        return 1 << 60 if self.found.hard or self.found.missed else self.found.cost

    def _asked(
        self, kept: tuple[Least, Least], settled: tuple[_Way | None, ...], asked: tuple[Either, ...]
    ) -> list[Branch]:
        """The ways to go on from what is settled, the cheapest first; none where it is at its end, and then its layout is judged."""
        open_ = _settled(kept, asked)
        if open_ is None or self._least(kept, settled) >= self._most():
            return []
        best: list[Branch] | None = None
        for ways in self._questions(kept, settled, open_):
            if best is None or _weight(ways) < _weight(best):
                best = ways
            if len(ways) < 2:
                return ways
        if best is None:
            for number, way in enumerate(settled):
                if way is not None and way.bends:
                    return self._ways(kept, settled, open_, number, way.bends)
            self._places = _PLACES
            self._place(_copied(kept), settled, frozenset())
        return best or []

    def _questions(
        self, kept: tuple[Least, Least], settled: tuple[_Way | None, ...], open_: tuple[Either, ...]
    ) -> Iterator[list[Branch]]:
        """The ways of the leads that cost most among those that are open, then of pairs that have the fewest."""
        waits = [number for number, way in enumerate(settled) if way is None]
        if len(waits) > self._asked_leads:
            leads = self._leads
            waits.sort(key=lambda number: -self._lead_least(leads[number], leads[number].ways, *kept))
        for number in waits[: self._asked_leads]:
            yield self._ways(kept, settled, open_, number, self._leads[number].ways)
        few = min(map(len, open_), default=0)
        for either in [each for each in open_ if len(each) == few][: self._asked_pairs]:
            yield self._either(kept, settled, open_, either)

    def _ways(
        self,
        kept: tuple[Least, Least],
        settled: tuple[_Way | None, ...],
        open_: tuple[Either, ...],
        number: int,
        ways: Sequence[_Way],
    ) -> list[Branch]:
        found: list[Branch] = []
        self._compared += len(ways)
        for way in ways:
            now = _copied(kept)
            if all(_keep(now, each) for each in way.holds):
                then = (*settled[:number], way, *settled[number + 1 :])
                least = self._least(now, then)
                if least < self._most():
                    found.append((least, now, then, (*open_, *way.one_of)))
        return sorted(found, key=lambda each: each[0])

    def _either(
        self,
        kept: tuple[Least, Least],
        settled: tuple[_Way | None, ...],
        open_: tuple[Either, ...],
        either: Either,
    ) -> list[Branch]:
        found: list[Branch] = []
        self._compared += len(either)
        for some in either:
            now = _copied(kept)
            if all(_keep(now, each) for each in some):
                least = self._least(now, settled)
                if least < self._most():
                    found.append((least, now, settled, open_))
        return sorted(found, key=lambda each: each[0])

    def _least(self, kept: tuple[Least, Least], settled: tuple[_Way | None, ...]) -> int:
        """What the leads and places cost at least."""
        board, deck, (across, along) = self.board, self._deck, kept
        total = board.chosen + (board.line if any(not item.under for item in board.items) else 0)
        for item, it in enumerate(board.items):
            if it.use >= 0:
                total += it.use * along[deck][item]
            else:
                total -= it.use * (board.depth + along[item][deck] - self._solids[item].depth)
        for lead, way in zip(self._leads, settled, strict=True):
            total += self._lead_least(lead, lead.ways if way is None else (way,), across, along)
        return total

    def _lead_least(self, lead: _Lead, ways: Sequence[_Way], across: Least, along: Least) -> int:
        one, other = lead.ends
        (x1, y1), (x2, y2) = lead.spots
        x, y = _far(across, one, other, x2 - x1), _far(along, one, other, y2 - y1)
        best = 1 << 40
        for way in ways:
            if way.over:
                if along[one][other] > ROW or along[other][one] > ROW:
                    continue
                route = x + y + lead.high
            else:
                line, its_line = way.down
                down = 0 if line is None else _far(along, one, self._deck, line - y1)
                its_down = 0 if its_line is None else _far(along, other, self._deck, its_line - y2)
                between = 0 if line is None or its_line is None else abs(line - its_line)
                route = lead.passage + x + max(y, down + between + its_down)
            best = min(best, finished(lead.link.signal, route, lead.link.more) * lead.link.share)
        if lead.back and across[one][other] > 0:
            best += lead.back * across[one][other] // 100
        return best

    def _place(self, now: tuple[Least, Least], settled: tuple[_Way | None, ...], fronts: frozenset[int]) -> None:
        """Everything to a place that what is settled leaves, what has the least room first, where it seems to cost the least."""
        board, deck, step = self.board, self._deck, self.board.step
        self._places -= 1
        self._compared += 1
        room = [
            (-now[axis][item][deck] - now[axis][deck][item], axis, item)
            for axis in (0, 1)
            for item in range(deck)
            if -now[axis][item][deck] > now[axis][deck][item]
        ]
        if not room:
            self._judge(now)
            return
        _, axis, item = min(room)
        low, high = now[axis][deck][item], -now[axis][item][deck]
        ranked: list[tuple[int, int, tuple[Least, Least]]] = []
        for place in sorted({each // step * step for each in self._aims(now, axis, item, fronts)}):
            self._compared += 1
            there = _copied(now)
            if (
                low <= place <= high
                and _keep(there, (axis, deck, item, place))
                and _keep(there, (axis, item, deck, -place))
            ):
                cost = self._least(there, settled) + (board.line if axis and place not in fronts else 0)
                ranked.append((cost, place, there))
        for cost, place, there in sorted(ranked, key=lambda each: each[:2]):
            if self._places <= 0 or cost >= self._most():
                return
            self._place(there, settled, fronts | {place} if axis else fronts)

    def _judge(self, now: tuple[Least, Least]) -> None:
        at = [(now[0][self._deck][item], now[1][self._deck][item], shape) for item, shape in enumerate(self._shapes)]
        found = as_it_is(Layout(self.board, at, self.ground))
        if found.rank < self.found.rank:
            self.found = found

    def _aims(self, now: tuple[Least, Least], axis: int, item: int, fronts: frozenset[int]) -> Iterator[int]:
        """The ends and the middle of the room, and where a plug is in line with that at the other end of its lead or with a drop line."""
        deck, least = self._deck, now[axis]
        low, high = least[deck][item], -least[item][deck]
        yield from (low, high, (low + high) // 2)
        for lead in self._leads:
            if item not in lead.ends:
                continue
            mine = lead.ends.index(item)
            spot, its, other = lead.spots[mine][axis], lead.spots[1 - mine][axis], lead.ends[1 - mine]
            yield from (least[deck][other] + its - spot, -least[other][deck] + its - spot)
            if axis:
                yield from (line - spot for line in self.board.lines)
        if axis:
            yield from fronts

    def _at_first(self) -> tuple[Least, Least] | None:
        """What the deck and stated places leave."""
        board, deck = self.board, self._deck
        kept: tuple[Least, Least] = tuple(  # type: ignore[assignment]
            [[0 if one == other else _NEVER for other in range(deck + 1)] for one in range(deck + 1)] for _ in (0, 1)
        )
        for item, it in enumerate(board.items):
            reach = self._solids[item].reach
            for axis, size in ((0, board.width), (1, board.depth)):
                low, high = -reach[axis], size - reach[axis + 2]
                if it.fixed is not None:
                    low = high = it.fixed[axis]
                if not (_keep(kept, (axis, deck, item, low)) and _keep(kept, (axis, item, deck, -high))):
                    return None
        return kept

    def _all_apart(self) -> Iterator[Either]:
        board, deck = self.board, self._deck
        for one in range(deck):
            for other in self.ground.beside[one]:
                if other > one:
                    areas = self.room.areas(one, self._shapes[one], other, self._shapes[other])
                    yield from (_outside(area, one, other) for area in areas)
            it, solid = board.items[one], self._solids[one]
            for area in board.kept_free if it.under else (*board.kept_free, *board.reserved):
                yield _outside((area[0] - solid.width, area[1] - solid.depth, area[2], area[3]), deck, one)
            for edge in () if it.under else (edge for tier in board.tiers for edge in (tier.front, tier.rear)):
                yield ((1, deck, one, edge),), ((1, one, deck, solid.depth - edge),)

    def _lead(self, number: int) -> _Lead:
        board, link = self.board, self.board.links[number]
        (start, high), (end, its_high) = self._plug(link.start), self._plug(link.end)
        ends = tuple(each.item if each.item >= 0 else self._deck for each in (link.start, link.end))
        tops = [each.item >= 0 and not board.items[each.item].under for each in (link.start, link.end)]
        passage = under_route(board, high, tops[0]) + under_route(board, its_high, tops[1])
        back = link.back * link.share if link.onward and min(link.start.item, link.end.item) >= 0 else 0
        lead = _Lead(link, (ends[0], ends[1]), (start, end), abs(high - its_high), passage, back)
        ways = [self._over(lead, left) for left in (0, 1)] if all(tops) and link.run != "under" else []
        if link.run != "over":
            lines = [board.lines if top and board.lines else (None,) for top in tops]
            ways += [self._under(lead, (down, its_down)) for down, its_down in product(*lines)]
        return lead.replace(ways=tuple(ways))  # type: ignore[no-any-return]

    def _plug(self, end: End) -> tuple[Spot, int]:
        if end.item < 0:
            return (end.x, end.y), 0
        plug = self.board.items[end.item].shapes[self._shapes[end.item]].sockets[end.socket]
        under = self.board.items[end.item].under
        return (plug.x + plug.dx * plug.exit, plug.y + plug.dy * plug.exit), 0 if under else plug.above

    def _tops(self) -> list[int]:
        return [item for item, it in enumerate(self.board.items) if not it.under]

    def _over(self, lead: _Lead, left: int) -> _Way:
        """Over the deck, with that of both at the left, and nothing reaching between them; by one bend or the other."""
        one, other = lead.ends
        first, second = lead.ends[left], lead.ends[1 - left]
        solids = self._solids
        row = (1, one, other, -ROW), (1, other, one, -ROW), (0, first, second, solids[first].width)
        aside: list[Either] = []
        for item in self._tops():
            if item in lead.ends:
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
        bends = []
        for turn in (0, 1):
            clear = tuple(either for item in self._tops() for either in self._clear(lead, turn, item))
            bends.append(_Way(True, (), clear))
        return _Way(True, row, tuple(aside), bends=tuple(bends))

    def _clear(self, lead: _Lead, turn: int, item: int) -> Iterator[Either]:
        """A body is on neither stretch of a way with one bend: that goes along y at the x of one end, and along x at the y of the other."""
        solid = self._solids[item]
        sizes = solid.width, solid.depth
        for axis, at in ((0, turn), (1, 1 - turn)):
            its, size = lead.spots[at][axis], sizes[axis]
            end = lead.ends[at]
            across, far = 1 - axis, sizes[1 - axis]
            spots = [(each, spot[across]) for each, spot in zip(lead.ends, lead.spots, strict=True)]
            yield (
                ((axis, end, item, its),),
                ((axis, item, end, size - its),),
                tuple((across, each, item, spot) for each, spot in spots),
                tuple((across, item, each, far - spot) for each, spot in spots),
            )

    def _under(self, lead: _Lead, down: tuple[int | None, int | None]) -> _Way:
        """Below the deck, through these drop lines, which no body covers there."""
        free: list[Either] = []
        for end, (x, _), line in zip(lead.ends, lead.spots, down, strict=True):
            if line is None:
                continue
            for item in self._tops():
                solid = self._solids[item]
                free.append(
                    (
                        ((0, end, item, x),),
                        ((0, item, end, solid.width - x),),
                        ((1, self._deck, item, line),),
                        ((1, item, self._deck, solid.depth - line),),
                    )
                )
        return _Way(False, (), tuple(free), down)


def _settled(kept: tuple[Least, Least], asked: Sequence[Either]) -> tuple[Either, ...] | None:
    """Keeps to all that has one way left; what has more of them, None where something has none."""
    while True:
        changed, left = False, []
        for either in asked:
            may = []
            for some in either:
                holds = True
                for axis, one, other, far in some:
                    least = kept[axis]
                    if least[other][one] + far > 0:
                        break
                    holds = holds and least[one][other] >= far
                else:
                    if holds:
                        break
                    may.append(some)
            else:
                if not may:
                    return None
                if len(may) == 1:
                    if not all(_keep(kept, each) for each in may[0]):
                        return None
                    changed = True
                else:
                    left.append(tuple(may))
        if not changed:
            return tuple(left)
        asked = left


def _weight(ways: list[Branch]) -> tuple[int, int]:
    """Of few ways, and of those that cost most, the most is seen."""
    return len(ways), -sum(least for least, *_ in ways)


def _elsewhere(waiting: list[Branch], kind: int) -> int:
    """The cheapest that waits, the first, or the one in the middle."""
    if kind == 1:
        return min(range(len(waiting)), key=lambda place: waiting[place][0])
    return 0 if kind == 2 else len(waiting) // 2


def _outside(area: tuple[int, int, int, int], one: int, other: int) -> Either:
    """The other corner, seen from the first, is not inside an open rectangle."""
    left, front, right, rear = area
    return ((0, one, other, right),), ((0, other, one, -left),), ((1, one, other, rear),), ((1, other, one, -front),)


def _far(least: Least, one: int, other: int, more: int) -> int:
    """How far two spots are at least, the other `more` from its corner than the first from its own."""
    low = least[one][other] + more
    if low > 0:
        return low
    high = more - least[other][one]
    return -high if high < 0 else 0


def _copied(kept: tuple[Least, Least]) -> tuple[Least, Least]:
    return [row[:] for row in kept[0]], [row[:] for row in kept[1]]


def _keep(kept: tuple[Least, Least], apart: Apart) -> bool:
    """Keeps to one more difference; whether it is possible."""
    axis, one, other, far = apart
    least = kept[axis]
    if least[one][other] >= far:
        return True
    beyond = least[other]
    if beyond[one] + far > 0:
        return False
    for row in least:
        start = row[one] + far
        if start > row[other]:
            for place, more in enumerate(beyond):
                if start + more > row[place]:
                    row[place] = start + more
    return True
