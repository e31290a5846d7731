"""A layout -> a better one: a few things are taken out, and each goes back to the best place that is free; again and again.

The best place is the one at which the leads to what stands already cost least, none of the others in the way counted; the hotter, the more
another is taken. What finds no place waits outside, and goes in anew the next time: so a tight board is filled, too.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.search.board import Link
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.lengths import Standing, backwards, link_bound, some_runs
from rigc.analysis.laying.search.moves import Dice

_STEPS = 4  # of the other search take as long as to put one thing back,
_CELLS_A_STEP = 40_000  # and one more for so many bits
_MEASURED = 10  # places whose leads are measured, of all that look cheaper than the best of these
_OUT, _OUT_TO_FILL = 6, 7  # so many things are taken out at most, beside what waits outside
_SWAY = 0.4  # of the heat: what a place may look cheaper by
_BROKEN = 60_000  # what a rule counts that a lead breaks at a place
_MISSED = 10_000  # and what a wish that is missed more counts, for each tenth of a millimetre


class Refill:
    """Betters one layout. `found` is the best of it that is without fault, None as long as there is none; `steps` is what it took."""

    def __init__(self, layout: Layout, free: tuple[int, ...], room: FreeRoom, dice: Dice) -> None:
        self.layout, self.board, self.ground = layout, layout.board, layout.ground
        self.free, self.room, self.dice = free, room, dice
        self.found: Found | None = None
        self.steps = 0
        self._at = list(layout.at)
        self._outside = set(left_out(layout.board, tuple(layout.at))) if layout.hard else set()
        if layout.broken and not self._outside:
            self._outside = set(free[:1])
        self._links = [
            [link for link in self.board.links if item in (link.start.item, link.end.item)]
            for item in range(len(layout.at))
        ]
        cells = room.columns * room.rows * len(layout.at)
        self._each = [_STEPS + cells * len(item.shapes) // _CELLS_A_STEP for item in self.board.items]

    def run(self, steps: int, hot: float, cold: float) -> Iterator[int]:
        """Takes out and puts back until the steps are used up; each time the steps that it took."""
        while self.steps < steps:
            before = self.steps
            self._once(hot * (cold / hot) ** (before / steps))
            yield self.steps - before

    def _once(self, heat: float) -> None:
        order = self._taken_out()
        standing = set(range(len(self._at))).difference(order)
        at, outside = list(self._at), set()
        for item in order:
            place = self._best_place(item, at, standing, heat * _SWAY)
            self.steps += self._each[item]
            if place is not None:
                at[item] = place
                standing.add(item)
                continue
            outside.add(item)
            if len(outside) > len(self._outside):
                return
        if outside:
            self._at, self._outside = at, outside
        else:
            self._judge(at, heat)

    def _judge(self, at: list[At], heat: float) -> None:
        """Takes a layout in which all stand, unless it is too much worse."""
        layout = self.layout
        changes = [(item, *at[item]) for item in self.free if at[item] != layout.at[item]]
        hard, missed, there = layout.faults_with(changes)
        cost, broken = layout.cost_with(there, changes)
        if hard or broken:
            return
        if self.found is None or (0, missed, cost) < self.found.rank:
            self.found = Found(tuple(there), 0, missed, cost)
        worse = (missed - layout.missed) * _MISSED + cost - layout.cost
        if self._outside or worse <= heat * self.dice.readiness():
            layout.take(changes, there, hard, missed)
            self._at, self._outside = there, set()

    def _taken_out(self) -> list[int]:
        """What waits outside, one thing more and some that are near it: in the order in which they go back."""
        dice, free = self.dice, self.free
        first = free[dice.below(len(free))]
        out = dict.fromkeys([*sorted(self._outside), first])
        count = len(self._outside) + 1 + dice.below(_OUT_TO_FILL if self._outside else _OUT)
        near = self._near(first)
        while len(out) < min(count, len(free)) and near:
            out[near.pop(min(dice.below(len(near)), dice.below(len(near))))] = None
        order = list(out)
        for place in range(len(order) - 1, 0, -1):
            other = dice.below(place + 1)
            order[place], order[other] = order[other], order[place]
        if self._outside and dice.below(2):
            order.sort(key=self._area, reverse=True)
        return order

    def _area(self, item: int) -> int:
        shape = self.board.items[item].shapes[0]
        return shape.width * shape.depth

    def _near(self, item: int) -> list[int]:
        """The other free things: what is linked, then the nearest first."""
        linked = {end.item for link in self._links[item] for end in (link.start, link.end)}
        x, y, _ = self._at[item]

        def key(other: int) -> tuple[int, int]:
            its = self._at[other]
            return 0 if other in linked else abs(its[0] - x) + abs(its[1] - y), other

        return sorted((each for each in self.free if each != item), key=key)

    def _best_place(self, item: int, at: list[At], standing: set[int], sway: float) -> At | None:
        """The best place found for a thing beside those that stand, of which nothing is in its way there."""
        board, ground = self.board, self.ground
        stood = {each: ground.stand(each, at[each]) for each in standing}
        closed = [
            link
            for link in board.links
            if all(end.item in standing or end.item in (item, -1) for end in (link.start, link.end))
        ]
        ranked = self._ranked(item, at, stood, [link for link in closed if link in self._links[item]], sway)
        beside = [each for each in ground.beside[item] if each in standing]
        best: tuple[int, At] | None = None
        measured = 0
        for least, _, place in sorted(ranked):
            if best is not None and (least >= best[0] or measured == _MEASURED):
                break
            if not ground.is_free(item, place, at, beside):
                continue
            measured += 1
            stood[item] = ground.stand(item, place)
            cost = least
            for link, (length, broken, *_) in zip(closed, some_runs(board, closed, stood), strict=True):
                cost += length * link.share + broken * _BROKEN + backwards(link, stood) - link_bound(board, link, stood)
            if best is None or cost < best[0]:
                best = cost, place
        return None if best is None else best[1]

    def _ranked(
        self, item: int, at: list[At], stood: dict[int, Standing], links: list[Link], sway: float
    ) -> list[tuple[int, int, At]]:
        """The free places that touch something or are in line with it, each with what it costs at least, swayed by the dice."""
        board, ground, it = self.board, self.ground, self.board.items[item]
        standing = list(stood)
        fronts = {at[each][1] for each in standing if not board.items[each].under}
        found: list[tuple[int, int, At]] = []
        for shape in range(len(it.shapes)):
            free = self.room.of(item, shape, at, standing)
            if not free:
                continue
            xs, ys = self._aims(item, shape, links, stood)
            for x, y in self.room.places(free, xs, [*fronts, *ys]):
                stood[item] = site = ground.stand(item, (x, y, shape))
                cost = site.cost + int(sway * self.dice.readiness())
                cost += sum(link_bound(board, link, stood) for link in links)
                cost += board.line if not it.under and y not in fronts else 0
                found.append((cost, len(found), site.at))
        return found

    def _aims(
        self, item: int, shape: int, links: list[Link], stood: dict[int, Standing]
    ) -> tuple[list[int], list[int]]:
        """Where a thing is in line with what it is linked to, or lies just beside a drop line or where a lead goes down."""
        solid = self.ground.solids[item][shape]
        xs, ys = [self._at[item][0]], [self._at[item][1]]
        for line in self.board.lines:
            ys += [line, line - solid.depth]
        for each in stood.values():
            if each.on_top:
                xs += [x for stop in each.stops for x in (stop[0], stop[0] - solid.width)]
        for link in links:
            for mine, its in ((link.start, link.end), (link.end, link.start)):
                if mine.item != item or its.item == item:
                    continue
                socket = solid.shape.sockets[mine.socket]
                x, y = (its.x, its.y) if its.item < 0 else stood[its.item].stops[its.socket][:2]
                xs.append(x - socket.x - socket.dx * socket.exit)
                ys.append(y - socket.y - socket.dy * socket.exit)
        return xs, ys
