"""Where everything stands -> the best place at which a thing, or a few that stay together, can go in.

The places that count are the corners of the free room and those where plugs, drop lines or fronts are in line. Each is weighed with what the leads
to all that stands cost at least; of the best of them the leads are measured.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from math import inf

from rigc.analysis.laying.search.asked import Asked
from rigc.analysis.laying.search.board import Area, End, Link
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Group
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.lengths import (
    ROW,
    Standing,
    backwards,
    finished,
    link_bound,
    some_runs,
    under_route,
)
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.wishes.wished import missed

BROKEN = 150_000  # what a rule counts that a lead breaks at a place
MISSED = 10_000  # and what a wish that is missed more counts, for each tenth of a millimetre
_MEASURED = 2  # places at least whose leads are measured
_WISHED = 40  # places that are asked by how much wishes are missed there

Foot = tuple[
    int, int, int
]  # of a plug: how far to the nearest drop line, up from below to it, and its height over the deck
Placed = tuple[tuple[int, At], ...]
Ranked = tuple[int, int, int, int, Group]  # what it seems to cost, what it costs at least, the corner of the group


class _Pull:
    """A lead from a thing of a group to what stands, seen from the group's corner: where that would be if both plugs were at one spot (`x`, `y`),
    the foot `there`, and the front (None: it can't run over the deck) at which both fronts are in line."""

    __slots__ = ("away", "feet", "front", "key", "link", "row", "there", "way", "x", "y")

    def __init__(
        self, link: Link, x: int, y: int, there: Foot, feet: dict[int, Foot], key: tuple[int, int, int], row: int
    ):
        self.link, self.x, self.y, self.there, self.feet, self.key, self.row = link, x, y, there, feet, key, row
        self.front: int | None = None
        self.way = 0  # 1 where sound goes onward to what stands, -1 where it comes from there
        self.away = 0  # the corner in x at which both corners are one above the other


class Insertion:
    """Puts things into the free room of a board; `weighed` counts the places that it weighed."""

    def __init__(self, room: FreeRoom, dice: Dice, asked: Asked | None = None) -> None:
        """Things go where they are `asked` to stand, if they have room there."""
        self.room, self.board, self.ground, self.dice, self._asked = room, room.board, room.ground, dice, asked
        items = range(len(self.board.items))
        self.links = [
            tuple(n for n, link in enumerate(self.board.links) if item in (link.start.item, link.end.item))
            for item in items
        ]
        self._wishes = [
            tuple(wish for wish in self.board.wishes if item in (*wish.items, *wish.others)) for item in items
        ]
        self._feet: dict[tuple[int, int, int], dict[int, Foot]] = {}
        self._bare = self.board.replace(crossing=0)  # the points of the ways are not asked for
        self.weighed = 0
        self._cover = BROKEN // (2 * max(1, len(self.board.lines)))

    def best(
        self, ways: Sequence[Group], at: list[At], standing: set[int], sway: float, count: int, most: float = inf
    ) -> list[tuple[int, Placed]] | None:
        """The best places found for a group that may stand in one of some ways, each with what it costs there; none that costs more than `most`.
        None where it has no room. The more `sway`, the more others are taken."""
        free: Sequence[int] = [self.room.of_group(group, at, standing) for group in ways]
        if self._asked is not None:
            free = self._asked.of_ways(ways, free)
        ranked = sorted(
            each
            for group, bits in zip(ways, free, strict=True)
            for each in self.ranked(group, bits, at, standing, sway, most)
        )
        self.weighed += len(ranked)
        if any(self._wishes[item] for item, *_ in ways[0]):
            ranked = self._by_wishes(ranked, at)
        stood: dict[int, Standing] = {}
        found: list[tuple[int, int, Placed]] = []
        measured = max(_MEASURED, count)
        for seems, least, x, y, group in ranked:
            if len(found) == measured or (len(found) >= count and seems >= found[count - 1][0]):
                break
            placed = tuple((item, (x + dx, y + dy, shape)) for item, dx, dy, shape in group)
            if not self._is_free(placed, at, standing):
                continue
            stood = stood or {each: self.ground.stand(each, at[each]) for each in standing}
            more = self._more(placed, stood)
            found.append((seems + more, least + more, placed))
            found.sort(key=lambda each: each[0])
        return [each[1:] for each in found[:count]] if any(free) else None

    def _is_free(self, placed: Placed, at: list[At], standing: set[int]) -> bool:
        ground = self.ground
        return all(
            ground.is_free(item, there, at, [each for each in ground.beside[item] if each in standing])
            for item, there in placed
        )

    def _more(self, placed: Placed, stood: dict[int, Standing]) -> int:
        """By how much the leads of what is placed cost more than was weighed, because things are in their way."""
        board = self.board
        around = {**stood, **{item: self.ground.stand(item, there) for item, there in placed}}
        numbers = dict.fromkeys(number for item, _ in placed for number in self.links[item])
        links = [link for link in map(board.links.__getitem__, numbers) if _has_ends(link, around)]
        more = 0
        for link, (length, broken, *_) in zip(links, some_runs(self._bare, links, around), strict=True):
            more += length * link.share + broken * BROKEN + backwards(link, around) - link_bound(board, link, around)
        return more

    def _by_wishes(self, ranked: list[Ranked], at: list[At]) -> list[Ranked]:
        """The best places by what wishes for these things miss there, too."""
        found = []
        for seems, least, x, y, group in ranked[:_WISHED]:
            there = list(at)
            for item, dx, dy, shape in group:
                there[item] = x + dx, y + dy, shape
            wishes = dict.fromkeys(wish for item, *_ in group for wish in self._wishes[item])
            seems += MISSED * sum(missed(self.board, wish, there) for wish in wishes) // 4
            found.append((seems, least, x, y, group))
        return sorted(found)

    def ranked(
        self, group: Group, free: int, at: list[At], standing: set[int], sway: float, most: float = inf
    ) -> Iterator[Ranked]:
        """The free places of a group that count and do not cost more than `most`, each with what it costs at least, swayed by the dice."""
        room, dice = self.room, self.dice
        if not free:
            return
        pulls = list(self._pulls(group, at, standing))
        fronts = {at[each][1] for each in standing if not self.board.items[each].under}
        near = list(self._near_treadles(group, at, standing))
        xs, ys = self._aims(group, pulls, fronts)
        xs += [x for left, _, right, _ in near for x in (left, right)]
        slope, base, lines = self._ground_cost(group)
        exits, covers = self._below(at, standing, group)
        step, line, shoe, share = self.room.step, self.board.line, self.board.shoe, self.board.shoe_share
        for x, y in room.places(free, xs, ys):
            cost = base + slope * y
            for dy in lines:
                if y + dy not in fronts:
                    cost += line
            for drop, dx, front, rear, width in covers:
                if front < drop - y < rear:
                    left = x + dx
                    cost += self._cover * (bisect_left(exits, left + width) - bisect_right(exits, left))
            for left, front, right, rear in near:
                if left < x < right and front <= y <= rear:
                    cost += share * min(x - left, right - x, shoe)
            for pull in pulls:
                cost += self._pulled(pull, x, y, y // step)
                if cost > most:
                    break
            else:
                yield cost + int(sway * dice.readiness()), cost, x, y, group

    def _near_treadles(self, group: Group, at: list[At], standing: set[int]) -> Iterator[Area]:
        """Where the group's corner lies while a foot is too near to a treadle, of which one is of the group and the other stands (see
        `Ground.pinched`): in between it lacks as much as the corner is inside the nearer side, or a whole half of a shoe."""
        ground, shoe = self.ground, self.board.shoe
        for item, dx, dy, shape in group:
            for other in ground.shod[item]:
                if other not in standing:
                    continue
                left, front, right, rear = ground.box(other, at[other])
                if self.board.items[other].treadle:
                    for x, low, high in ground.feet[item][shape]:
                        yield left - shoe - dx - x, front - dy - high, right + shoe - dx - x, rear - dy - low
                if self.board.items[item].treadle:
                    solid = ground.solids[item][shape]
                    for x, low, high in ground.feet[other][at[other][2]]:
                        across = left + x - dx
                        yield (
                            across - solid.width - shoe,
                            front + low - dy - solid.depth,
                            across + shoe,
                            front + high - dy,
                        )

    def _below(
        self, at: list[At], standing: set[int], group: Group
    ) -> tuple[list[int], list[tuple[int, int, int, int, int]]]:
        """Where leads go down among what stands, and how the things of a group may cover a drop line there: the line, how far in x, and from where
        to where in y and how wide the body is, seen from the corner."""
        if not self.board.lines:
            return [], []
        exits = []
        for link in self.board.links:
            one, other = link.start.item, link.end.item
            if (one >= 0 and one not in standing) or (other >= 0 and other not in standing):
                continue
            tops = [end for end in (link.start, link.end) if end.item >= 0 and not self.board.items[end.item].under]
            if len(tops) == 2 and link.run != "under" and abs(at[one][1] - at[other][1]) <= ROW:
                continue
            exits += [self.ground.stand(end.item, at[end.item]).stops[end.socket][0] for end in tops]
        exits.sort()
        covers = []
        for item, dx, dy, shape in group if exits else ():
            solid = self.ground.solids[item][shape]
            covers += [(line, dx, dy, dy + solid.depth, solid.width) for line in self.board.lines]
        return exits, covers

    def _pulled(self, pull: _Pull, x: int, y: int, row: int) -> int:
        """What a lead costs at least with the group's corner there (see `link_bound`)."""
        down, up, high = pull.feet.get(row + pull.row) or self._foot(pull.key, row + pull.row)
        its_down, its_up, its_high = pull.there
        along, across, link = abs(y - pull.y), abs(x - pull.x), pull.link
        if pull.front is not None and (link.run == "over" or -ROW <= y - pull.front <= ROW):
            route = across + along + abs(high - its_high)
        else:
            route = across + up + its_up + max(along, down + its_down)
        cost = finished(link.signal, route, link.more) * link.share
        if pull.way and (far := pull.way * (pull.away - x)) > 0:
            cost += link.back * far * link.share // 100
        return cost

    def _pulls(self, group: Group, at: list[At], standing: set[int]) -> Iterator[_Pull]:
        inside = {item for item, *_ in group}
        for item, dx, dy, shape in group:
            it = self.board.items[item]
            for number in self.links[item]:
                link = self.board.links[number]
                mine, its = (link.start, link.end) if link.start.item == item else (link.end, link.start)
                if its.item in inside or (its.item >= 0 and its.item not in standing):
                    continue
                plug = it.shapes[shape].sockets[mine.socket]
                x, y, there, top = self._standing_end(its, at)
                key = item, shape, mine.socket
                pull = _Pull(
                    link,
                    x - plug.x - plug.dx * plug.exit - dx,
                    y - plug.y - plug.dy * plug.exit - dy,
                    there,
                    self._feet.setdefault(key, {}),
                    key,
                    dy // self.room.step,
                )
                if its.item >= 0:
                    if top and not it.under and link.run != "under":
                        pull.front = at[its.item][1] - dy
                    if link.onward and link.back:
                        pull.way, pull.away = (1 if link.start.item == item else -1), at[its.item][0] - dx
                yield pull

    def _standing_end(self, end: End, at: list[At]) -> tuple[int, int, Foot, bool]:
        if end.item < 0:
            return end.x, end.y, (0, under_route(self.board, 0, False), 0), False
        stands = self.ground.stand(end.item, at[end.item])
        x, y, high, _, down = stands.stops[end.socket]
        return x, y, (down, under_route(self.board, high, stands.on_top), high), stands.on_top

    def _foot(self, key: tuple[int, int, int], row: int) -> Foot:
        """The foot of a plug of an item in a shape with its corner in a row."""
        item, shape, socket = key
        _, _, high, _, down = self.ground.stand(item, (0, row * self.room.step, shape)).stops[socket]
        foot = down, under_route(self.board, high, not self.board.items[item].under), high
        self._feet[key][row] = foot
        return foot

    def _aims(self, group: Group, pulls: list[_Pull], fronts: set[int]) -> tuple[list[int], list[int]]:
        """The corners at which a plug, a drop line or a front is in line with something."""
        xs = [pull.x for pull in pulls]
        ys = [pull.y for pull in pulls]
        for pull in pulls:
            if pull.front is not None:
                ys += [pull.front, pull.front - ROW, pull.front + ROW]
        for item, _, dy, shape in group:
            it = self.board.items[item]
            if it.under:
                continue
            depth = it.shapes[shape].depth
            plugs = [plug.y + plug.dy * plug.exit for plug in it.shapes[shape].sockets]
            ys += [line - dy - far for line in self.board.lines for far in (0, depth, *plugs)]
            ys += [front - dy for front in fronts]
        return xs, ys

    def _ground_cost(self, group: Group) -> tuple[int, int, set[int]]:
        """What a step to the rear costs, what the front edge of the deck costs, and the fronts of what stands on top, seen from its corner."""
        slope = base = 0
        lines = set()
        for item, _, dy, shape in group:
            it = self.board.items[item]
            slope += it.use
            base += it.use * dy if it.use >= 0 else -it.use * (self.board.depth - dy - it.shapes[shape].depth)
            if not it.under:
                lines.add(dy)
        return slope, base, lines


def _has_ends(link: Link, around: dict[int, Standing]) -> bool:
    return all(end.item < 0 or end.item in around for end in (link.start, link.end))
