"""Where everything stands -> for a thing, or a few that stay together, all places, and what of that which stands is in the way at which of them.

Beside bodies, plugs and feet the leads count: a body may not cover the drop line at which another thing's lead goes down, and a plug whose lead
goes below the deck needs a drop line that nothing covers. What is told so is bits of places (see `free_room`), quick and nearly right:
who takes a place asks the rules once more.
"""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.laying.search.board import Area, End, Link
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Group, Member
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.lengths import ROW

Hindered = dict[int, int]
"""By item that stands, the places at which it is in the way."""


class Hindrance:
    """Asked of one board; `links_of` are the numbers of the leads of each item."""

    def __init__(self, room: FreeRoom, links_of: list[tuple[int, ...]]) -> None:
        self.room, self.board, self.ground, self.links_of = room, room.board, room.ground, links_of

    def of(self, group: Group, at: list[At], standing: set[int], below: Iterable[int]) -> tuple[int, Hindered]:
        """The bits of the corners at which a group is on the deck, and of those at which it has something in its way, by item. `below` are
        the leads of what stands that go below the deck."""
        inside = {item for item, *_ in group}
        tops = [(item, self.ground.box(item, at[item])) for item in standing if not self.board.items[item].under]
        stops = list(self._stops(below, at)) if self.board.lines else []
        found: Hindered = {}
        every = -1
        for member in group:
            item, dx, dy, shape = member
            alone = self.room.alone(item, shape)
            every &= self.room.seen_from(alone, dx, dy)
            mine: Hindered = {}
            for other in self.ground.beside[item]:
                if other in standing:
                    mine[other] = self.room.blocked(item, shape, other, at[other])
            if self.board.lines and not self.board.items[item].under:
                self._covering(member, stops, mine)
                for number in self.links_of[item]:
                    self._uncovered(self.board.links[number], member, (inside, at, standing), tops, mine)
            for other, bits in mine.items():
                if bits & alone:
                    found[other] = found.get(other, 0) | self.room.seen_from(bits & alone, dx, dy)
        return every, {other: bits & every for other, bits in found.items() if bits & every}

    def _stops(self, links: Iterable[int], at: list[At]) -> Iterable[tuple[int, int, int]]:
        """Where these leads go down: the item, x, and the drop line."""
        for number in links:
            link = self.board.links[number]
            for end in (link.start, link.end):
                if (down := self._down(end, at)) is not None:
                    yield (end.item, *down)

    def _down(self, end: End, at: list[At]) -> tuple[int, int] | None:
        """The x at which an end on top goes down, and the nearest drop line there."""
        if end.item < 0 or self.board.items[end.item].under:
            return None
        x, y, *_ = self.ground.stand(end.item, at[end.item]).stops[end.socket]
        return x, min(self.board.lines, key=lambda line: abs(line - y))

    def _covering(self, member: Member, stops: list[tuple[int, int, int]], mine: Hindered) -> None:
        """The places at which a body lies over a drop line where the lead of something else goes down."""
        item, _, _, shape = member
        solid = self.ground.solids[item][shape]
        for other, x, line in stops:
            if bits := self.room.inside((x - solid.width, line - solid.depth, x, line)):
                mine[other] = mine.get(other, 0) | bits

    def _uncovered(
        self,
        link: Link,
        member: Member,
        stands: tuple[set[int], list[At], set[int]],
        tops: list[tuple[int, Area]],
        mine: Hindered,
    ) -> None:
        """The places at which one of the ends of a lead to what stands would find its drop line covered; in one row with that it may run over
        the deck."""
        item, _, _, shape = member
        inside, at, standing = stands
        start, end = (link.start, link.end) if link.start.item == item else (link.end, link.start)
        other = end.item
        if link.run == "over" or other in inside or (other >= 0 and other not in standing):
            return
        board, room = self.board, self.room
        solid, plug = self.ground.solids[item][shape], board.items[item].shapes[shape].sockets[start.socket]
        x, y = plug.x + plug.dx * plug.exit, plug.y + plug.dy * plug.exit
        whole = (-1, board.width + 1)
        row = 0
        if link.run != "under" and other >= 0 and not board.items[other].under:
            row = room.inside((whole[0], at[other][1] - ROW - 1, whole[1], at[other][1] + ROW + 1))
        blame = other if other >= 0 else item
        there = self._down(end, at)
        if there is not None and any(box[0] < there[0] < box[2] and box[1] < there[1] < box[3] for _, box in tops):
            mine[blame] = mine.get(blame, 0) | (room.alone(item, shape) & ~row)
        lines = board.lines
        for number, line in enumerate(lines):
            nearest = (
                (lines[number - 1] + line) // 2 - y if number else -board.depth,
                (lines[number + 1] + line) // 2 - y if number + 1 < len(lines) else 2 * board.depth,
            )
            zone = room.inside((whole[0], nearest[0] - 1, whole[1], nearest[1] + 1)) & ~row
            if 0 < x < solid.width:
                mine[blame] = mine.get(blame, 0) | (room.inside((whole[0], line - solid.depth, whole[1], line)) & zone)
            for cover, box in tops:
                if box[1] < line < box[3]:
                    bits = room.inside((box[0] - x, -1, box[2] - x, board.depth + 1)) & zone
                    mine[cover] = mine.get(cover, 0) | bits
