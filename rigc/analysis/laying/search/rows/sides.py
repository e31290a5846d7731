"""A board with few open things -> its best layout, or nearly: for every two things it is settled on which side of each other they stand, and for every
lead how it runs; where they stand follows from that.

What is settled is a set of differences that corners keep to, on each axis: the longest way from each corner to each other (and to the deck's) tells
what is no more possible and what each lead costs at least. What has one way left is settled at once; else every way is tried, the cheapest first,
and what must cost more than the best layout is left out. On most boards that is too much for all things at once: then the best layout keeps its
sides, but for a few things, in all places and turns, and these are others again and again, first three of them, then more (large neighbourhoods:
Shaw 1998, for routes of vehicles; from memory). Ways round what hangs, wishes, balance and tapes are not thought of: a layout counts as the rules
judge it. So this is no proof.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import combinations, product

from rigc.analysis.laying.search.board import Spot
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import REACHED
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import OVER
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.rows.differences import (
    Apart,
    Either,
    Kept,
    copied,
    keep,
    keep_between,
    nothing_kept,
    outside,
    settled,
)
from rigc.analysis.laying.search.rows.lead_ways import LeadWays, Way

_LOOSE = 3  # things at first whose sides are open
_AT_ONCE = 4  # so few open things are never loosened in parts
_TRY, _MORE = 8_000, 3  # looks for each few things; so many times as many each time the sizes begin anew
_LOOKS_A_STEP = (
    80  # looks (at a set of differences, a lead, a layout's lead) that take as long as another step of the search
)
_OF_A_LEAD = 60  # looks that a lead of a layout takes which is judged
_COPY = 0.13  # looks that a copy takes with what follows from one difference more, for each two corners
_LONG = 50  # branches, until something else is gone on with
_ASKED = ((2, 3), (2, 1))  # of so many leads and pairs the ways are compared before one is asked, in turn
_PLACES = 60  # so many times at most a thing is set down for what is settled
_DETAILS = 3  # ways of a lead in detail that are tried, of those the cheapest


Branch = tuple[int, Kept, tuple[Way | None, ...], tuple[Either, ...]]
"""What it costs at least, what is kept to on both axes, how each lead runs (None: open), and the sets that are open still."""


class _Turned:
    """All things of a board in certain turns: which sets of differences hold always, and the ways of all leads."""

    def __init__(self, room: FreeRoom, shapes: tuple[int, ...]) -> None:
        self.room, self.board, self.shapes, self.deck = room, room.board, shapes, len(room.board.items)
        self.solids = [solids[shape] for solids, shape in zip(room.ground.solids, shapes, strict=True)]
        self.always = tuple(self._all_apart())
        self.leads = [LeadWays(self.board, number, shapes, self.solids) for number in range(len(self.board.links))]
        self.worth = [
            (item, it.use, self.board.depth - self.solids[item].depth)
            for item, it in enumerate(self.board.items)
            if it.use
        ]
        self.by_hand = [
            (item, it.use < 0, *spot)
            for item, it in enumerate(self.board.items)
            for spot in it.shapes[shapes[item]].at_hand
        ]
        self.rows = [room.rows_on_ground(item, shape) for item, shape in enumerate(shapes)]

    def on_deck(self) -> Kept | None:
        """What the deck and stated places leave; None where they leave nothing."""
        board, deck = self.board, self.deck
        kept = nothing_kept(deck + 1)
        for item, it in enumerate(board.items):
            reach = self.solids[item].reach
            for axis, size in ((0, board.width), (1, board.depth)):
                low, high = -reach[axis], size - reach[axis + 2]
                if it.fixed is not None:
                    low = high = it.fixed[axis]
                if not keep_between(kept, axis, deck, item, low, high):
                    return None
            rows = self.rows[item]
            if rows is not None and (not rows or not keep_between(kept, 1, deck, item, rows[0], rows[-1])):
                return None
        return kept

    def _all_apart(self) -> Iterator[Either]:
        board, deck = self.board, self.deck
        for one in range(deck):
            it, solid = board.items[one], self.solids[one]
            for other in self.room.ground.beside[one]:
                if other > one and (it.fixed is None or board.items[other].fixed is None):
                    areas = self.room.areas(one, self.shapes[one], other, self.shapes[other])
                    yield from (outside(area, one, other) for area in areas)
            if it.fixed is not None:
                continue
            for area in board.kept_free if it.under else (*board.kept_free, *board.reserved):
                yield outside((area[0] - solid.width, area[1] - solid.depth, area[2], area[3]), deck, one)
            for edge in () if it.under else (edge for tier in board.tiers for edge in (tier.front, tier.rear)):
                yield ((1, deck, one, edge),), ((1, one, deck, solid.depth - edge),)


class Sides:
    """Betters what is `found` of one board."""

    def __init__(self, room: FreeRoom, found: Found) -> None:
        self.board, self.ground, self.found = room.board, room.ground, found
        self.room, self._deck, self._dice = room, len(room.board.items), Dice(0)
        self._free = tuple(number for number, item in enumerate(self.board.items) if item.fixed is None)
        self._all_turned: dict[tuple[int, ...], _Turned] = {}
        self._turned = self._in_turns(self._turns_now())
        tops = [min(shape.width for shape in item.shapes) for item in room.board.items if not item.under]
        self._always_costs = room.board.chosen + room.board.line * -(-sum(tops) // room.board.width)
        self._copy = round(_COPY * (self._deck + 1) ** 2)
        self._laid = found, Layout(self.board, list(found.at), self.ground)
        self._looks = self._places = 0
        self._ended = True
        self._asked_leads, self._asked_pairs = _ASKED[0]

    def run(self) -> Iterator[int]:
        """Goes on until no way is left; each time the steps that it took."""
        told = 0
        for loose, shapes, looks in self._tries():
            self._turned = self._in_turns(shapes)
            for ended in self._loosened(loose, self._looks + looks):
                before, told = told, self._looks // _LOOKS_A_STEP
                yield told - before
                self._ended = self._ended and ended

    def _tries(self) -> Iterator[tuple[frozenset[int], tuple[int, ...], int]]:
        """What is loosened, in which turns, and for how many looks: a few things, as long as that betters something, then more; once all were
        loose at once and ways are left, all that again for longer, with the questions in another order."""
        first = _LOOSE if len(self._free) > _AT_ONCE else len(self._free)
        size, looks, number = first, _TRY, 0
        while True:
            before, self._ended = self.found, True
            self._asked_leads, self._asked_pairs = _ASKED[number % len(_ASKED)]
            for loose in self._some(size):
                for shapes in self._turns(loose):
                    yield loose, shapes, looks
            if size == len(self._free):
                if self._ended:
                    return
                size, looks, number = first, looks * _MORE, number + 1
            elif self.found is before:
                size += 1

    def _some(self, size: int) -> list[frozenset[int]]:
        """All sets of so many open things, in a dealt order."""
        some = [frozenset(each) for each in combinations(self._free, size)]
        return [some.pop(self._dice.below(len(some))) for _ in range(len(some))]

    def _turns(self, loose: frozenset[int]) -> Iterator[tuple[int, ...]]:
        """The turns of all things as they are; then those in which one that is loose is turned otherwise, or, if all are, any of them."""
        counts = [len(item.shapes) for item in self.board.items]
        now = self._turns_now()
        yield now
        if len(loose) == len(self._free):
            ways = [range(counts[item]) if item in loose else (now[item],) for item in range(self._deck)]
            yield from (shapes for shapes in product(*ways) if shapes != now)
            return
        for item in sorted(loose):
            if counts[item] > 1:
                now = self._turns_now()
                other = (now[item] + 1 + self._dice.below(counts[item] - 1)) % counts[item]
                yield (*now[:item], other, *now[item + 1 :])

    def _turns_now(self) -> tuple[int, ...]:
        return tuple(at[2] for at in self.found.at)

    def _in_turns(self, shapes: tuple[int, ...]) -> _Turned:
        if shapes not in self._all_turned:
            self._all_turned[shapes] = _Turned(self.room, shapes)
        return self._all_turned[shapes]

    def _loosened(self, loose: frozenset[int], end: int) -> Iterator[bool]:
        """Tries the ways of what is loose beside the rest as it stands, up to so many looks in all; now and then, and at last, whether none is
        left."""
        begun = self._begun(loose)
        waiting: list[Branch] = [] if begun is None else [begun]
        number = 0
        while waiting and self._looks < end:
            least, kept, ways, asked = waiting.pop()
            if least >= self._most():
                continue
            waiting += reversed(self._asked(kept, ways, asked))
            number += 1
            if number % _LONG == 0 and waiting:
                waiting.append(waiting.pop(_elsewhere(waiting, number // _LONG % 3)))
                yield True
        yield not waiting

    def _begun(self, loose: frozenset[int]) -> Branch | None:
        """What holds of all that is not loose as it stands, and which leads between such things run how."""
        kept, layout = self._turned.on_deck(), self._layout()
        if kept is None:
            return None
        if not layout.hard and not all(keep_between(kept, *each) for each in self._balanced(layout)):
            return None
        open_, stands = list(self._turned.always), [at[:2] for at in self.found.at]
        ways: list[Way | None] = [None] * len(self._turned.leads)
        if len(loose) < len(self._free):
            runs = layout.runs()
            for number, lead in enumerate(self._turned.leads):
                if loose.isdisjoint(lead.ends):
                    ways[number] = way = self._as_it_runs(lead, runs[number][2] == OVER, stands)
                    open_ += () if way is None else way.one_of
                    if way is not None and not all(keep(kept, each) for each in way.holds):
                        return None
        left = []
        for either in open_:
            holds = None if _names(either, loose) else self._as_it_stands(either, stands)
            if holds is None:
                left.append(either)
            elif not all(keep(kept, each) for each in holds):
                return None
        return 0, kept, tuple(ways), tuple(left)

    def _balanced(self, layout: Layout) -> Iterator[tuple[int, int, int, int, int]]:
        """From where to where things may stand on each axis, seen from the deck, that are pressed beyond the feet, with the centre of gravity where
        it is now."""
        bears, deck, board = layout.bears, self._deck, self.board
        if bears is None:
            return
        for item, shape in enumerate(self._turned.shapes):
            pressed = self.ground.pressed[item][shape]
            if pressed is None or board.items[item].under or board.items[item].fixed is not None:
                continue
            for axis, size in ((0, board.width), (1, board.depth)):
                low, high = (int(bears[axis + side]) for side in (0, 2))
                yield axis, deck, item, board.feet - pressed[axis] - low, size - board.feet - pressed[axis + 2] + high

    def _layout(self) -> Layout:
        """The best layout."""
        if self._laid[0] is not self.found:
            self._looks += _OF_A_LEAD * len(self.board.links)
            self._laid = self.found, Layout(self.board, list(self.found.at), self.ground)
        return self._laid[1]

    def _as_it_runs(self, lead: LeadWays, over: bool, stands: Sequence[Spot]) -> Way | None:
        """The way of a lead between things that stay."""
        ways = [way for way in lead.ways if way.over == over and self._slack(way.holds, stands) >= 0]
        return ways[0] if ways else None

    def _as_it_stands(self, either: Either, stands: Sequence[Spot]) -> tuple[Apart, ...] | None:
        """Of these sets that which holds with the most room to spare; None where none does."""
        best = max(either, key=lambda some: self._slack(some, stands))
        return best if self._slack(best, stands) >= 0 else None

    def _slack(self, some: tuple[Apart, ...], stands: Sequence[Spot]) -> int:
        deck = (0, 0)
        return min(
            (
                (stands[other] if other < self._deck else deck)[axis]
                - (stands[one] if one < self._deck else deck)[axis]
                - far
                for axis, one, other, far in some
            ),
            default=0,
        )

    def _most(self) -> int:
        """What costs so much is no better than what is found."""
        return 1 << 60 if self.found.hard or self.found.missed else self.found.cost

    def _asked(self, kept: Kept, ways: tuple[Way | None, ...], asked: tuple[Either, ...]) -> list[Branch]:
        """The ways to go on from what is settled, the cheapest first; none where it is at its end, and then its layout is judged."""
        open_, looked = settled(kept, asked)
        self._looks += looked
        if open_ is None or self._least(kept, ways) >= self._most():
            return []
        best: list[Branch] | None = None
        for some in self._questions(kept, ways, open_):
            if best is None or _weight(some) < _weight(best):
                best = some
            if len(some) < 2:
                return some
        if best is None:
            for number, way in enumerate(ways):
                if way is not None and way.parts:
                    lead = self._turned.leads[number]
                    parts = sorted(way.parts, key=lambda each: lead.least(each, kept))
                    return self._ways(kept, ways, open_, number, parts[:_DETAILS])
            self._places = _PLACES
            self._place(copied(kept), ways, frozenset())
        return best or []

    def _questions(self, kept: Kept, ways: tuple[Way | None, ...], open_: tuple[Either, ...]) -> Iterator[list[Branch]]:
        """The ways of the leads that cost most among those that are open, then of pairs that have the fewest."""
        leads = self._turned.leads
        waits = [number for number, way in enumerate(ways) if way is None]
        if len(waits) > self._asked_leads:
            waits.sort(key=lambda number: -leads[number].least(None, kept))
            self._looks += len(waits)
        for number in waits[: self._asked_leads]:
            yield self._ways(kept, ways, open_, number, leads[number].ways)
        few = min(map(len, open_), default=0)
        for either in [each for each in open_ if len(each) == few][: self._asked_pairs]:
            yield self._either(kept, ways, open_, either)

    def _ways(
        self,
        kept: Kept,
        settled_ways: tuple[Way | None, ...],
        open_: tuple[Either, ...],
        number: int,
        ways: Sequence[Way],
    ) -> list[Branch]:
        found: list[Branch] = []
        for way in ways:
            now = copied(kept)
            self._looks += self._copy
            if all(keep(now, each) for each in way.holds):
                then = (*settled_ways[:number], way, *settled_ways[number + 1 :])
                least = self._least(now, then)
                if least < self._most():
                    found.append((least, now, then, (*open_, *way.one_of)))
        return sorted(found, key=lambda each: each[0])

    def _either(
        self, kept: Kept, ways: tuple[Way | None, ...], open_: tuple[Either, ...], either: Either
    ) -> list[Branch]:
        found: list[Branch] = []
        for some in either:
            now = copied(kept)
            self._looks += self._copy
            if all(keep(now, each) for each in some):
                least = self._least(now, ways)
                if least < self._most():
                    found.append((least, now, ways, open_))
        return sorted(found, key=lambda each: each[0])

    def _least(self, kept: Kept, ways: tuple[Way | None, ...]) -> int:
        """What the leads and places cost at least."""
        deck, (across, along) = self._deck, kept
        total = self._always_costs
        for item, rear, x, y, share in self._turned.by_hand:
            far = self.board.depth - y + along[item][deck]
            if not rear:
                far = min(far, x + across[deck][item], self.board.width - x + across[item][deck])
            total += share * max(0, far - REACHED)
        for item, use, most in self._turned.worth:
            total += use * along[deck][item] if use >= 0 else -use * (most + along[item][deck])
        self._looks += len(ways)
        for lead, way in zip(self._turned.leads, ways, strict=True):
            total += lead.least(way, kept)
        return total

    def _place(self, now: Kept, ways: tuple[Way | None, ...], fronts: frozenset[int]) -> None:
        """Everything to a place that what is settled leaves, what has the least room first, where it seems to cost the least."""
        board, deck, step = self.board, self._deck, self.board.step
        self._places -= 1
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
        ranked: list[tuple[int, int, Kept]] = []
        places = {each // step * step for each in self._aims(now, axis, item, fronts)}
        rows = self._turned.rows[item] if axis else None
        if rows is not None:
            places = {rows[min(bisect_left(rows, place), len(rows) - 1)] for place in places}
        for place in sorted(places):
            if not low <= place <= high:
                continue
            there = copied(now)
            self._looks += self._copy
            if keep_between(there, axis, deck, item, place, place):
                cost = self._least(there, ways) + (board.line if axis and place not in fronts else 0)
                ranked.append((cost, place, there))
        for cost, place, there in sorted(ranked, key=lambda each: each[:2]):
            if self._places <= 0 or cost >= self._most():
                return
            self._place(there, ways, fronts | {place} if axis else fronts)

    def _judge(self, now: Kept) -> None:
        shapes, deck = self._turned.shapes, self._deck
        at = [(now[0][deck][item], now[1][deck][item], shape) for item, shape in enumerate(shapes)]
        self._looks += _OF_A_LEAD * len(self.board.links)
        found = as_it_is(Layout(self.board, at, self.ground))
        if found.rank < self.found.rank:
            self.found = found

    def _aims(self, now: Kept, axis: int, item: int, fronts: frozenset[int]) -> Iterator[int]:
        """The ends and the middle of the room, and where a plug is in line with that at the other end of its lead or with a drop line."""
        deck, least = self._deck, now[axis]
        low, high = least[deck][item], -least[item][deck]
        yield from (low, high, (low + high) // 2)
        for lead in self._turned.leads:
            if item not in lead.ends:
                continue
            mine = lead.ends.index(item)
            spot, its, other = lead.spots[mine][axis], lead.spots[1 - mine][axis], lead.ends[1 - mine]
            yield from (least[deck][other] + its - spot, -least[other][deck] + its - spot)
            if axis:
                yield from (line - spot for line in self.board.lines)
        if axis:
            yield from fronts


def _names(either: Either, loose: frozenset[int]) -> bool:
    return any(one in loose or other in loose for some in either for _, one, other, _ in some)


def _weight(ways: list[Branch]) -> tuple[int, int]:
    """Of few ways, and of those that cost most, the most is seen."""
    return len(ways), -sum(least for least, *_ in ways)


def _elsewhere(waiting: list[Branch], kind: int) -> int:
    """The cheapest that waits, the first, or the one in the middle."""
    if kind == 1:
        return min(range(len(waiting)), key=lambda place: waiting[place][0])
    return 0 if kind == 2 else len(waiting) // 2
