"""A board on which not all stand -> all standing: each thing that waits goes in, and what is in its way there comes out and waits in its place.

Guided ejection search (Nagata and Bräysy 2009, for routes of vehicles), with rows of things for routes: how often something could not go in
without others coming out is counted, and those come out first that seldom had trouble. Things that leads join go in as one row as long as such a row finds
room; a row that has trouble too often falls apart. So even a board is filled on which few layouts exist.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations

from rigc.analysis.laying.search.asked import Asked
from rigc.analysis.laying.search.glue import Glue, Group
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.insertion import Insertion
from rigc.analysis.laying.search.lengths import OVER
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.rows.hindrance import Hindered, Hindrance
from rigc.analysis.laying.search.rows.met_leads import MetLeads

_SWAY = 20_000.0  # what a place may look cheaper by
_TRIED, _OUT_TRIED = 4, 4  # places at which nothing, and sets of what comes out, that are asked by the rules
_FALLS_APART = 3  # a row that had trouble more often falls apart
_ASKED = 30  # a thing that had trouble more often may stand where its wish is missed
_GIVEN_UP = 60  # a lead that made things come out more often may break its rule
_STEPS, _STANDING_A_STEP, _CELLS_A_STEP, _WEIGHED_A_STEP = (
    6,
    2,
    30_000,
    60,
)  # what a try takes, as `refill` counts steps

Tried = tuple[int, int, Group, tuple[int, int], tuple[Group, ...], set[int]]
"""What comes out is worth so much, what it seems to cost, the group, its corner, what comes out, and which leads run over the deck then."""


class Ejection:
    """Fills one board. `at` is where what is `standing` stands; `waiting` is what does not, the next last; `steps` is what it took."""

    def __init__(
        self,
        glue: Glue,
        dice: Dice,
        at: Sequence[At],
        standing: Iterable[int],
        rows: Sequence[Group],
        asked: Asked | None = None,
    ) -> None:
        """Things go where they are `asked` to stand, as long as that makes no trouble."""
        self._asked = asked
        self.board, self.ground, self.room, self.dice = glue.board, glue.ground, glue.room, dice
        self.at, self.standing, self.steps = list(at), set(standing), 0
        self.fixed = frozenset(number for number, item in enumerate(self.board.items) if item.fixed is not None)
        self.insertion = Insertion(self.room, dice)
        self.hindrance = Hindrance(self.room, self.insertion.links)
        self.waiting = sorted(rows, key=lambda row: (self._area(row), row))
        self._row_of: dict[int, Group] = {item: row for row in rows for item, *_ in row}
        for item in self.standing - self.fixed:
            self._row_of[item] = ((item, 0, 0, self.at[item][2]),)
        self._trouble = [1] * len(self.board.items)
        self.leads, self._blamed = MetLeads(self.ground), [0] * len(self.board.links)
        runs = self.leads.runs(self.at, set(), {item: self.at[item] for item in self.standing})
        self._over = {number for number, run in runs.items() if run[2] == OVER}
        for number, (_, breaks, *_) in runs.items():
            self._blamed[number] = _GIVEN_UP if breaks else 0  # nothing that goes in can mend it

    def run(self, steps: int) -> Iterator[int]:
        """Goes on until all stand or the steps are used up; each time the steps that it took."""
        while self.waiting and self.steps < steps:
            before = self.steps
            self._once()
            yield self.steps - before

    def _once(self) -> None:
        row = self.waiting.pop()
        tried = self._best(row, pushing=True)
        comes_out = () if tried is None else tried[4]
        if tried is None or comes_out:
            for item, *_ in row:
                self._trouble[item] += 1
            if len(row) > 1 and (tried is None or max(self._trouble[item] for item, *_ in row) > _FALLS_APART):
                self._falls_apart(row)
                return
        if tried is None:
            self.waiting.insert(0, row)
        else:
            self.waiting += sorted(comes_out)
            self._put(tried)
        if tried is None or comes_out:
            self._shift_one()

    def _falls_apart(self, row: Group) -> None:
        for item, _, _, shape in row:
            self._row_of[item] = ((item, 0, 0, shape),)
            self.waiting.append(self._row_of[item])

    def _shift_one(self) -> None:
        """One row of what stands goes elsewhere, if it has room there, so that not the same comes about again."""
        rows = sorted({self._row_of[item] for item in self.standing - self.fixed})
        if not rows:
            return
        row = rows[self.dice.below(len(rows))]
        items = [item for item, *_ in row]
        self.standing.difference_update(items)
        tried = self._best(row, pushing=False)
        if tried is None:
            self.standing.update(items)
        else:
            self._put(tried)

    def _put(self, tried: Tried) -> None:
        _, _, group, (x, y), out, over = tried
        for row in out:
            self.standing.difference_update(item for item, *_ in row)
        for item, dx, dy, shape in group:
            self.at[item] = x + dx, y + dy, shape
            self.standing.add(item)
            if len(group) == 1:
                self._row_of[item] = group
        self._over = over

    def _best(self, row: Group, pushing: bool) -> Tried | None:
        """The cheapest place at which nothing is in the way; where there is none, that at which the least comes out, if it may."""
        standing, at = self.standing, self.at
        below = [number for number in self.leads.with_ends(standing) if number not in self._over]
        cells = self.room.columns * self.room.rows
        best: Tried | None = None
        ways: list[tuple[Group, int, dict[Group, int]]] = []
        for group in self._ways(row):
            self.steps += _STEPS + len(standing) // _STANDING_A_STEP + cells // _CELLS_A_STEP
            every, hindered = self.hindrance.of(group, at, standing, below)
            ways.append((group, *self._by_row(group, every, hindered)))
        if self._asked is not None and max(self._trouble[item] for item, *_ in row) <= _ASKED:
            left = self._asked.of_ways([group for group, *_ in ways], [every for _, every, _ in ways])
            ways = [(group, every, by_row) for (group, _, by_row), every in zip(ways, left, strict=True) if every]
        for group, every, by_row in ways:
            free = every
            for bits in by_row.values():
                free &= ~bits
            for x, y, seems in self._places(group, free)[:_TRIED]:
                if best is not None and best[:2] <= (0, seems):
                    break
                tried = self._tried(group, x, y, seems)
                if tried is not None and (pushing or not tried[4]) and (best is None or tried[:2] < best[:2]):
                    best = tried
                if tried is not None and not tried[4]:
                    break
        if not pushing or (best is not None and not best[0]):
            return best
        for group, every, by_row in ways:
            for value, bits in self._least_out(every, by_row)[:_OUT_TRIED]:
                if best is not None and best[0] <= value:
                    break
                places = self._places(group, bits) or [(*self.room.spot(bits), 0)]
                tried = self._tried(group, *places[0])
                if tried is not None and (best is None or tried[:2] < best[:2]):
                    best = tried
        return best

    def _by_row(self, group: Group, every: int, hindered: Hindered) -> tuple[int, dict[Group, int]]:
        """The places that are left beside what stays, and what is in the way there by row."""
        inside = {item for item, *_ in group}
        by_row: dict[Group, int] = {}
        for item, bits in hindered.items():
            if item in self.fixed or item in inside:
                every &= ~bits
            else:
                row = self._row_of[item]
                by_row[row] = by_row.get(row, 0) | bits
        return every, by_row

    def _least_out(self, every: int, by_row: dict[Group, int]) -> list[tuple[int, int]]:
        """The places at which one row or two are in the way, by which these are: those of the least worth first."""
        one = two = more = 0
        for bits in by_row.values():
            bits &= every
            more |= two & bits
            two |= one & bits
            one |= bits
        only, both = one & ~two, two & ~more
        found = [(self._worth((row,)), here) for row, bits in by_row.items() if (here := bits & only)]
        some = [(row, here) for row, bits in by_row.items() if (here := bits & both)]
        for (row, bits), (other, its) in combinations(some, 2):
            if bits & its:
                found.append((self._worth((row, other)), bits & its))
        order = [(value, self.dice.below(1000), bits) for value, bits in found]
        order.sort(key=lambda each: each[:2])
        return [(value, bits) for value, _, bits in order]

    def _places(self, group: Group, bits: int) -> list[tuple[int, int, int]]:
        """Of these places those that count, each with what it seems to cost, the cheapest first."""
        if not bits:
            return []
        ranked = sorted(self.insertion.ranked(group, bits, self.at, self.standing, _SWAY))
        self.steps += len(ranked) // _WEIGHED_A_STEP
        return [(x, y, seems) for seems, _, x, y, _ in ranked]

    def _tried(self, group: Group, x: int, y: int, seems: int) -> Tried | None:
        """What truly comes out at a place; None where something is in the way that stays."""
        ground = self.ground
        placed: dict[int, At] = {item: (x + dx, y + dy, shape) for item, dx, dy, shape in group}
        out: dict[Group, None] = {}
        for item, there in placed.items():
            if ground.alone(item, there):
                return None
            for other in ground.beside[item]:
                if other in self.standing and ground.between(item, there, other, self.at[other]):
                    if other in self.fixed:
                        return None
                    out[self._row_of[other]] = None
        standing = self.standing.difference(item for row in out for item, *_ in row)
        runs = self.leads.runs(self.at, standing, placed)
        for number, (_, breaks, *_) in runs.items():
            if not breaks or self._blamed[number] >= _GIVEN_UP:
                continue
            rows = self._ends_that_may_go(number, placed)
            if not rows:
                return None
            if not any(row in out for row in rows):
                self._blamed[number] += 1
                out[min(rows, key=lambda row: (self._worth((row,)), row))] = None
        over = self._over.difference(runs) | {number for number, run in runs.items() if run[2] == OVER}
        return self._worth(out), seems, group, (x, y), tuple(out), over

    def _ends_that_may_go(self, number: int, placed: dict[int, At]) -> list[Group]:
        link = self.board.links[number]
        ends = (link.start.item, link.end.item)
        return [self._row_of[item] for item in ends if item >= 0 and item not in placed and item not in self.fixed]

    def _ways(self, row: Group) -> list[Group]:
        """A thing alone may stand in each of its shapes."""
        if len(row) > 1:
            return [row]
        ((item, *_),) = row
        return [((item, 0, 0, shape),) for shape in range(len(self.board.items[item].shapes))]

    def _worth(self, rows: Iterable[Group]) -> int:
        return sum(self._trouble[item] for row in rows for item, *_ in row)

    def _area(self, row: Group) -> int:
        shapes = [self.board.items[item].shapes[0] for item, *_ in row]
        return sum(shape.width * shape.depth for shape in shapes)


def dealt_rows(glue: Glue, items: Iterable[int], dice: Dice, loose: int) -> list[Group]:
    """The things as rows that leads hold together, which are dealt; of a hundred leads so many are left `loose`."""
    row_of: dict[int, Group] = {item: ((item, 0, 0, 0),) for item in items}
    numbers = list(range(len(glue.board.links)))
    for place in range(len(numbers) - 1, 0, -1):
        swapped = dice.below(place + 1)
        numbers[place], numbers[swapped] = numbers[swapped], numbers[place]
    for number in numbers:
        link = glue.board.links[number]
        one, other = row_of.get(link.start.item), row_of.get(link.end.item)
        if one is None or other is None or one is other or dice.below(100) < loose:
            continue
        offsets = glue.offsets(number)
        if not offsets:
            continue
        most = offsets[0][0] + _SWAY * dice.readiness()
        count = next((place for place, each in enumerate(offsets) if each[0] > most), len(offsets))
        offset = offsets[dice.below(max(1, count))]
        joined = glue.joined(number, offset, one, other) if glue.runs_over(number, offset) else None
        if joined is not None:
            row_of.update((item, joined) for item, *_ in joined)
    return list(dict.fromkeys(row_of.values()))
