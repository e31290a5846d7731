"""Two things with a lead between them -> how they may stand side by side so that it runs over the deck: the shortest ways first.

Two things so near that one short lead joins them are moved as one. Only the two themselves are thought to be on the deck.
"""

from __future__ import annotations

from rigc.analysis.laying.search.board import Area, Link
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.lengths import OVER, ROW, finished, some_runs

Member = tuple[int, int, int, int]  # item, its corner seen from that of the group, number of its shape
Group = tuple[Member, ...]
Offset = tuple[int, int, int, int, int]  # what the lead costs, shapes of both, the second corner seen from the first

_BESIDE = 1  # lines of fronts that are tried on each side of the common one, as far apart as one row allows


class Glue:
    """The ways in which the things of a board's leads may stand side by side; found when they are first asked for."""

    def __init__(self, room: FreeRoom) -> None:
        self.room, self.board, self.ground = room, room.board, room.ground
        self._offsets: dict[int, tuple[Offset, ...]] = {}
        self._runs: dict[tuple[int, Offset], bool] = {}

    def offsets(self, number: int) -> tuple[Offset, ...]:
        """Of a link, the cheapest first; none where it can't run over the deck."""
        if number not in self._offsets:
            self._offsets[number] = tuple(sorted(self._found(self.board.links[number])))
        return self._offsets[number]

    def runs_over(self, number: int, offset: Offset) -> bool:
        """Whether the two, so placed and alone, are in nobody's way and their lead really runs over the deck."""
        key = number, offset
        if key not in self._runs:
            link = self.board.links[number]
            one, other = link.start.item, link.end.item
            here = self._middle(), self._middle(), offset[1]
            there = here[0] + offset[3], here[1] + offset[4], offset[2]
            stood = {one: self.ground.stand(one, here), other: self.ground.stand(other, there)}
            clear = not self.ground.between(one, here, other, there)
            self._runs[key] = clear and some_runs(self.board, [link], stood)[0][2] == OVER
        return self._runs[key]

    def joined(self, number: int, offset: Offset, one: Group, other: Group) -> Group | None:
        """Two groups, each with one thing of a link, as one; None where they would be in each other's way."""
        link = self.board.links[number]
        _, shape, its, dx, dy = offset
        first = next(each for each in one if each[0] == link.start.item)
        second = next(each for each in other if each[0] == link.end.item)
        if (len(one) > 1 and first[3] != shape) or (len(other) > 1 and second[3] != its):
            return None
        across, along = first[1] + dx - second[1], first[2] + dy - second[2]
        mine = one if len(one) > 1 else ((first[0], 0, 0, shape),)
        theirs = other if len(other) > 1 else ((second[0], 0, 0, its),)
        moved = tuple((item, x + across, y + along, turned) for item, x, y, turned in theirs)
        spread = (*mine, *moved)
        wide = max(x for _, x, _, _ in spread) - min(x for _, x, _, _ in spread)
        deep = max(y for _, _, y, _ in spread) - min(y for _, _, y, _ in spread)
        if wide >= self.room.widest or deep >= self.board.depth:
            return None
        at: dict[int, At] = {item: (x, y + self._middle(), turned) for item, x, y, turned in spread}
        clear = all(
            not self.ground.between(item, at[item], its_item, at[its_item])
            for item, *_ in mine
            for its_item, *_ in moved
            if its_item in self.ground.beside[item]
        )
        return spread if clear else None

    def _middle(self) -> int:
        """Where two things are thought to stand, on the grid."""
        return self.board.width // (2 * self.room.step) * self.room.step

    def _found(self, link: Link) -> set[Offset]:
        items = self.board.items
        one, other = link.start.item, link.end.item
        if min(one, other) < 0 or one == other or link.run == "under":
            return set()
        if items[one].under or items[other].under:
            return set()
        found: set[Offset] = set()
        step = self.room.step
        far = ROW // step
        lines = sorted({way * far * each // _BESIDE * step for each in range(_BESIDE + 1) for way in (-1, 1)})
        for shape, first in enumerate(items[one].shapes):
            plug = first.sockets[link.start.socket]
            for its, second in enumerate(items[other].shapes):
                its_plug = second.sockets[link.end.socket]
                areas = self.room.areas(one, shape, other, its)
                x = its_plug.x + its_plug.dx * its_plug.exit - plug.x - plug.dx * plug.exit
                y = its_plug.y + its_plug.dy * its_plug.exit - plug.y - plug.dy * plug.exit
                aligned = -y // step * step
                ys = [*lines, aligned] if abs(aligned) <= ROW else lines
                high = abs(plug.above - its_plug.above)
                for dy in ys:
                    for dx in self._beside(areas, dy, -x):
                        cost = finished(link.signal, abs(dx + x) + abs(dy + y) + high, link.more) * link.share
                        if link.onward and dx > 0:
                            cost += link.back * dx * link.share // 100
                        found.add((cost, shape, its, dx, dy))
        return found

    def _beside(self, areas: list[Area], dy: int, aim: int) -> list[int]:
        """The second corners in x, at that dy, at which two things just touch, or their plugs are in line with nothing between."""
        step = self.room.step
        here = [area for area in areas if area[1] < dy < area[3]]
        ends = [area[0] // step * step for area in here] + [-(-area[2] // step) * step for area in here]
        ends.append(aim // step * step)
        return [dx for dx in dict.fromkeys(ends) if not any(area[0] < dx < area[2] for area in here)]
