"""A layout -> a better one: a few things are taken out, and each goes back to the best place that is free; again and again.

Things that one short lead joins go back as one more often than not: so a row of them moves as a whole, which no single thing can do without
making the layout worse. Where one of them finds no place, nothing changes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import inf

from rigc.analysis.laying.search.asked import Asked
from rigc.analysis.laying.search.board import Link
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.glue import Glue, Group
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.insertion import BROKEN, MISSED, Insertion
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import OVER, finished, under_route
from rigc.analysis.laying.search.moves import Dice

_STEPS = 2  # of the other search take as long as to put one thing back, one more for each of its leads,
_CELLS_A_STEP = 60_000  # and one more for so many bits,
_WEIGHED_A_STEP = 60  # and for so many places
_OUT = 7  # so many things are taken out at most
_SWAY = 0.4  # of the heat: what a place may look cheaper by
MANY, _TRIES_OF_MANY = 8, 4  # of so many things and more the tries are fewer: others are taken out more often
_PLACES, _TRIES = (
    3,
    12,
)  # a thing is tried at so many places, and so many times things are put back before others are taken out
_APART = 4  # of so many leads one does not hold its two things together
_OUT_OF_BALANCE = 5 * MISSED  # what a tenth of a millimetre counts that is wrong and is in nobody's way


class Refill:
    """Betters one layout in which nothing is in anything's way. `found` is the best of it that is without fault, None as long as there is none; `steps` is what it took."""

    def __init__(
        self, layout: Layout, free: tuple[int, ...], glue: Glue, dice: Dice, asked: Asked | None = None
    ) -> None:
        self.layout, self.board, self.ground = layout, layout.board, layout.ground
        self.free, self.glue, self.dice = free, glue, dice
        self.insertion = Insertion(glue.room, dice, asked)
        self.found: Found | None = None
        self.steps = 0
        self._at = list(layout.at)
        self._value = self._worth(layout.hard, layout.broken, layout.missed, layout.cost)
        self._linked = [
            {end.item for number in numbers for end in (self.board.links[number].start, self.board.links[number].end)}
            for numbers in self.insertion.links
        ]
        self._least = [self._least_of(link) for link in self.board.links]
        self._glued: set[int] = set()
        cells = glue.room.columns * glue.room.rows
        self._each = [
            _STEPS + len(links) + cells * len(item.shapes) // _CELLS_A_STEP
            for item, links in zip(self.board.items, self.insertion.links, strict=True)
        ]

    def run(self, steps: int, hot: float, cold: float) -> Iterator[int]:
        """Takes out and puts back until the steps are used up; each time the steps that it took."""
        while self.steps < steps:
            before, weighed = self.steps, self.insertion.weighed
            self._once(hot * (cold / hot) ** (before / steps))
            self.steps += (self.insertion.weighed - weighed) // _WEIGHED_A_STEP
            yield self.steps - before

    def _once(self, heat: float) -> None:
        out = self._taken_out()
        numbers = dict.fromkeys(number for item in out for number in self.insertion.links[item])
        faulty = self.layout.hard or self.layout.broken
        self._most = inf if faulty else self._cost_of(out, numbers) + heat * self.dice.readiness()
        groups, least = self._groups(out, numbers, heat)
        self._by_links = self.dice.below(3) == 0
        self._sway = heat * _SWAY
        self._tries = _TRIES if len(self.free) < MANY else _TRIES_OF_MANY
        self._best: list[At] = []
        standing = set(range(len(self._at))).difference(out)
        self._put(groups, list(self._at), standing, 0, least)
        if self._best:
            self._judge(self._best, heat)

    def _put(self, groups: list[Group], at: list[At], standing: set[int], spent: int, least: dict[int, int]) -> None:
        """Puts the groups back, one at each of its best places and the others in turn; `least` is what leads cost at least that still lack an
        end."""
        if not groups:
            self._most, self._best = spent - 1, at
            return
        place = self._most_linked(groups, standing) if self._by_links else 0
        group, rest = groups[place], [*groups[:place], *groups[place + 1 :]]
        self.steps += sum(self._each[item] for item, *_ in group)
        self._tries -= 1
        ways = [group] if len(group) > 1 else self._turns(group)
        items = {item for item, *_ in group}
        now = standing | items
        numbers = dict.fromkeys(number for item in items for number in self.insertion.links[item])
        ready = [number for number in numbers if number in least and self._has_ends(number, now)]
        inner = sum(least[number] for number in ready if number in self._glued)
        rest_least = {number: cost for number, cost in least.items() if number not in ready}
        known = spent + inner + sum(rest_least.values())
        found = self.insertion.best(ways, at, standing, self._sway, _PLACES if rest else 1, self._most - known)
        if found is None and len(group) > 1:
            self._put([((i, 0, 0, s),) for i, _, _, s in group] + rest, at, standing, spent, least)
        for cost, placed in found or ():
            if known + cost > self._most:
                continue
            there = list(at)
            for item, its in placed:
                there[item] = its
            self._put(rest, there, now, spent + inner + cost, rest_least)
            if self._tries <= 0:
                return

    def _has_ends(self, number: int, standing: set[int]) -> bool:
        link = self.board.links[number]
        return all(end.item < 0 or end.item in standing for end in (link.start, link.end))

    def _cost_of(self, out: list[int], numbers: Iterable[int]) -> int:
        """What these things and their leads cost now, a line of its own for each."""
        costs = self.layout.costs()
        places = sum(self.ground.stand(item, self._at[item]).cost for item in out)
        return sum(costs[number] for number in numbers) + places + self.board.line * len(out)

    def _judge(self, at: list[At], heat: float) -> None:
        """Takes a layout in which all stand, unless it is too much worse."""
        layout = self.layout
        changes = [(item, *at[item]) for item in self.free if at[item] != layout.at[item]]
        if not changes:
            return
        hard, missed, there = layout.faults_with(changes)
        cost, broken = layout.cost_with(there, changes)
        if not (hard or broken) and (self.found is None or (0, missed, cost) < self.found.rank):
            self.found = Found(tuple(there), 0, missed, cost)
        value = self._worth(hard, broken, missed, cost)
        if value - self._value <= heat * self.dice.readiness():
            layout.take(changes, there, hard, missed)
            self._at, self._value = there, value

    def _worth(self, hard: int, broken: int, missed: int, cost: int) -> int:
        return hard * _OUT_OF_BALANCE + broken * (BROKEN - self.board.passing) // 10 + missed * MISSED + cost

    def _taken_out(self) -> list[int]:
        """One thing and some that are near it: in the order in which they go back."""
        dice, free = self.dice, self.free
        first = free[dice.below(len(free))]
        out = {first: None}
        count = 1 + dice.below(_OUT - 1)
        near = self._near(first)
        while len(out) < min(count, len(free)) and near:
            out[near.pop(min(dice.below(len(near)), dice.below(len(near))))] = None
        return list(out)

    def _groups(self, out: list[int], numbers: Iterable[int], heat: float) -> tuple[list[Group], dict[int, int]]:
        """What goes back as one, in a dealt order or the largest first; and what each of these links costs at least then."""
        dice, among = self.dice, set(out)
        group_of: dict[int, Group] = {item: ((item, 0, 0, self._at[item][2]),) for item in out}
        least: dict[int, int] = {}
        self._glued = set()
        for number in numbers:
            link = self.board.links[number]
            one, other = link.start.item, link.end.item
            if one not in among or other not in among:
                least[number] = finished(link.signal, 0, link.more) * link.share
                continue
            least[number] = self._least[number]
            held = dice.below(_APART) > 0
            if not held or group_of[one] is group_of[other]:
                continue
            offset = self._offset(number, heat)
            joined = None if offset is None else self.glue.joined(number, offset, group_of[one], group_of[other])
            if joined is not None and offset is not None:
                least[number] = offset[0]
                self._glued.add(number)
                for item, *_ in joined:
                    group_of[item] = joined
        groups = list(dict.fromkeys(group_of.values()))
        for place in range(len(groups) - 1, 0, -1):
            swapped = dice.below(place + 1)
            groups[place], groups[swapped] = groups[swapped], groups[place]
        if dice.below(3) == 0:
            groups.sort(key=lambda group: -self._area_of(item for item, *_ in group))
        return groups, least

    def _offset(self, number: int, heat: float) -> tuple[int, int, int, int, int] | None:
        """How the two things of a link stand side by side: as they do, or one of the ways that are nearly the best."""
        link = self.board.links[number]
        one, other = self._at[link.start.item], self._at[link.end.item]
        if self.layout.at == self._at and self.layout.runs()[number][2] == OVER and self.dice.below(2):
            return self.layout.costs()[number], one[2], other[2], other[0] - one[0], other[1] - one[1]
        offsets = self.glue.offsets(number)
        if not offsets:
            return None
        most = offsets[0][0] + heat * self.dice.readiness() / 8
        count = next((place for place, each in enumerate(offsets) if each[0] > most), len(offsets))
        offset = offsets[self.dice.below(max(1, count))]
        return offset if self.glue.runs_over(number, offset) else None

    def _least_of(self, link: Link) -> int:
        """What a link costs at least if its things are not side by side: its ways up and down."""
        ends = [self.board.items[end.item].under or end.item < 0 for end in (link.start, link.end)]
        route = sum(under_route(self.board, 0, not under) for under in ends)
        return finished(link.signal, route, link.more) * link.share

    def _most_linked(self, groups: list[Group], standing: set[int]) -> int:
        def links(place: int) -> int:
            return sum(len(self._linked[item] & standing) for item, *_ in groups[place])

        return max(range(len(groups)), key=links)

    def _turns(self, group: Group) -> list[Group]:
        """A thing alone may stand in each of its shapes."""
        ((item, *_),) = group
        return [((item, 0, 0, shape),) for shape in range(len(self.board.items[item].shapes))]

    def _area_of(self, items: Iterable[int]) -> int:
        shapes = (self.board.items[item].shapes[0] for item in items)
        return sum(shape.width * shape.depth for shape in shapes)

    def _near(self, item: int) -> list[int]:
        """The other free things: what is linked, then the nearest first."""
        linked = self._linked[item]
        x, y, _ = self._at[item]

        def key(other: int) -> tuple[int, int]:
            its = self._at[other]
            return 0 if other in linked else abs(its[0] - x) + abs(its[1] - y), other

        return sorted((each for each in self.free if each != item), key=key)
