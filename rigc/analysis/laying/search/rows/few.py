"""A board with few open things -> its best layout, or nearly: every way to hold them together in rows is tried, the cheapest first, and each by trying
every row at its best places in turn.

Of each lead that carries the most weight it is settled beforehand whether it runs over the deck, and which of its two things stands on which side, in
which turns, or whether it is loose; so a few rows are left to place. A branch ends where it must cost more than what is known, or where one of the
rows that wait has no place left. Of a row only the best of the places that count are tried, more of them in each pass: so this is no proof.
"""

from __future__ import annotations

from collections.abc import Iterator
from heapq import heappop, heappush

from rigc.analysis.laying.search.board import Link
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.glue import Glue, Group, Offset
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.insertion import Insertion
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import OVER, finished, under_route
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.rows.hindrance import Hindrance
from rigc.analysis.laying.search.rows.met_leads import MetLeads

_PASSES = (
    (40, 3, 1),
    (200, 4, 1),
    (200, 4, 3),
    (1000, 6, 3),
)  # so many places are tried of each way to make rows, so many of each row; so many lines of fronts
_FIRST = 4  # times as many places of the first row, because they cost nearly the same
_STEPS, _CELLS_A_STEP, _WEIGHED_A_STEP = (
    3,
    60_000,
    60,
)  # what asking for one row's places takes, as `refill` counts steps

Joint = tuple[int, Offset | None]
"""What a lead costs at least, and how its two things stand side by side (None: it is loose)."""


class Few:
    """Betters what is `found` of one board; `steps` is what it took."""

    def __init__(self, glue: Glue, free: tuple[int, ...], found: Found) -> None:
        self.board, self.ground, self.room, self.glue = glue.board, glue.ground, glue.room, glue
        self.free, self.found, self.steps = free, found, 0
        self.insertion = Insertion(self.room, Dice(0))
        self.hindrance = Hindrance(self.room, self.insertion.links)
        self.leads = MetLeads(self.ground)
        self._fixed = set(range(len(self.board.items))).difference(free)
        self._at: list[At] = [(*(item.fixed or (0, 0)), 0) for item in self.board.items]
        self._cells = self.room.columns * self.room.rows
        self._joints: list[tuple[Joint, ...]] = []
        self._tries = self._places = 0

    def run(self) -> Iterator[int]:
        """Goes on until every way was tried in each pass; each time the steps that it took."""
        for self._all_tries, self._places, lines in _PASSES:
            self._joints = [self._joints_of(number, lines) for number in range(len(self.board.links))]
            for least, joints in self._ways():
                if self._is_dear(least):
                    break
                before, self.steps = self.steps, self.steps + 1
                rows = self._rows(joints)
                if rows is not None:
                    self._tries = self._all_tries
                    loose = {number: cost for number, (cost, offset) in enumerate(joints) if offset is None}
                    self._put(rows, set(self._fixed), frozenset(), least - sum(loose.values()), loose)
                yield self.steps - before

    def _is_dear(self, least: int) -> bool:
        """Whether nothing that costs at least so much is better than what is found."""
        return not (self.found.hard or self.found.missed) and least >= self.found.cost

    def _ways(self) -> Iterator[tuple[int, tuple[Joint, ...]]]:
        """All ways to settle the leads, those of the least cost first."""
        first = (0,) * len(self._joints)
        waiting = [(sum(joints[0][0] for joints in self._joints), first, 0)]
        while waiting:
            least, way, place = heappop(waiting)
            yield least, tuple(joints[number] for joints, number in zip(self._joints, way, strict=True))
            for lead in range(place, len(way)):
                joints, number = self._joints[lead], way[lead]
                if number + 1 < len(joints):
                    more = joints[number + 1][0] - joints[number][0]
                    heappush(waiting, (least + more, (*way[:lead], number + 1, *way[lead + 1 :]), lead))

    def _joints_of(self, number: int, lines: int) -> tuple[Joint, ...]:
        board, link = self.board, self.board.links[number]
        loose: Joint = (finished(link.signal, self._down_and_up(link), link.more) * link.share, None)
        if link.share < max(each.share for each in board.links) or not {link.start.item, link.end.item} <= {*self.free}:
            return (loose,)
        found: dict[tuple[int, int, bool], list[Joint]] = {}
        for offset in self.glue.offsets(number):
            cost, shape, its, dx, _ = offset
            side = found.setdefault((shape, its, dx > 0), [])
            if len(side) < lines and self.glue.runs_over(number, offset):
                side.append((cost, offset))
        joints = [loose, *(joint for side in found.values() for joint in side)]
        return tuple(sorted(joints, key=lambda joint: (joint[0], joint[1] or ())))

    def _down_and_up(self, link: Link) -> int:
        """How far a loose lead goes at least: below the deck, with its drop lines right at its plugs."""
        route = 0
        for end in (link.start, link.end):
            item = None if end.item < 0 else self.board.items[end.item]
            on_top = item is not None and not item.under
            above = min(shape.sockets[end.socket].above for shape in item.shapes) if item is not None and on_top else 0
            route += under_route(self.board, above, on_top)
        return route

    def _rows(self, joints: tuple[Joint, ...]) -> list[Group] | None:
        """The rows that hold together so; None where they can't."""
        row_of: dict[int, Group] = {item: ((item, 0, 0, 0),) for item in self.free}
        for number, (_, offset) in enumerate(joints):
            if offset is None:
                continue
            link = self.board.links[number]
            one, other = row_of[link.start.item], row_of[link.end.item]
            joined = None if one is other else self.glue.joined(number, offset, one, other)
            if joined is None:
                return None
            row_of.update((item, joined) for item, *_ in joined)
        return list(dict.fromkeys(row_of.values()))

    def _put(
        self, rows: list[Group], standing: set[int], over: frozenset[int], spent: int, loose: dict[int, int]
    ) -> None:
        """Puts the rows at their best places in turn; `loose` is what the leads cost at least that lack an end, `over` are those over the deck."""
        if not rows:
            self._judge()
            return
        free = []
        below = [number for number in self.leads.with_ends(standing) if number not in over]
        for row in rows:
            self.steps += _STEPS + self._cells // _CELLS_A_STEP
            places = [(group, bits) for group in self._turns(row) if (bits := self._free(group, standing, below))]
            if not places:
                return
            free.append((-self._linked(row, standing), sum(bits.bit_count() for _, bits in places), row, places))
        first = standing == self._fixed
        _, _, row, places = min(free, key=lambda each: (each[0], -self._area(each[2]) if first else each[1]))
        ranked = sorted(
            each for group, bits in places for each in self.insertion.ranked(group, bits, self._at, standing, 0)
        )
        self.steps += len(ranked) // _WEIGHED_A_STEP
        most = self._places
        if not standing:
            most *= _FIRST
            ranked = ranked[:: max(1, len(ranked) // most)]
        rest, items = [each for each in rows if each is not row], {item for item, *_ in row}
        now = standing | items
        pending = loose.keys() - self.leads.with_ends(now)
        for _, least, x, y, group in ranked:
            if most == 0 or self._tries <= 0 or self._is_dear(spent + least + sum(loose[number] for number in pending)):
                return
            self._tries -= 1
            runs = self._stands(group, x, y, standing, over)
            if runs is not None:
                most -= 1
                self._put(rest, now, runs, spent + least, {number: loose[number] for number in pending})

    def _free(self, group: Group, standing: set[int], below: list[int]) -> int:
        every, hindered = self.hindrance.of(group, self._at, standing, below)
        for bits in hindered.values():
            every &= ~bits
        return every

    def _stands(self, group: Group, x: int, y: int, standing: set[int], over: frozenset[int]) -> frozenset[int] | None:
        """Puts a row there, and which leads run over the deck then; None where something is in its way or a lead breaks a rule."""
        ground, at = self.ground, self._at
        placed = {item: (x + dx, y + dy, shape) for item, dx, dy, shape in group}
        for item, there in placed.items():
            if not ground.is_free(item, there, at, [each for each in ground.beside[item] if each in standing]):
                return None
        runs = self.leads.runs(at, standing, placed)
        self.steps += len(runs)
        if any(broken for _, broken, *_ in runs.values()):
            return None
        for item, there in placed.items():
            at[item] = there
        return over.difference(runs) | {number for number, run in runs.items() if run[2] == OVER}

    def _judge(self) -> None:
        self.steps += len(self.board.links)
        found = as_it_is(Layout(self.board, self._at, self.ground))
        if found.rank < self.found.rank:
            self.found = found

    def _linked(self, row: Group, standing: set[int]) -> int:
        """How many leads go from a row to what stands."""
        links = self.board.links
        return sum(
            links[number].start.item in standing or links[number].end.item in standing
            for item, *_ in row
            for number in self.insertion.links[item]
        )

    def _turns(self, row: Group) -> list[Group]:
        """A thing alone may stand in each of its shapes."""
        if len(row) > 1:
            return [row]
        ((item, *_),) = row
        return [((item, 0, 0, shape),) for shape in range(len(self.board.items[item].shapes))]

    def _area(self, row: Group) -> int:
        return sum(
            self.ground.solids[item][shape].width * self.ground.solids[item][shape].depth for item, _, _, shape in row
        )
