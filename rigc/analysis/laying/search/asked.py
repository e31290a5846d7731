"""What is wished of one thing's own place -> the places that miss it least, whatever else stands."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.laying.search.board import Wish
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Group
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.wishes.wished import missed

_OWN = ("row", "on_side", "near_edge", "reach", "jacks_look", "stands")  # what each misses along x and along y adds up


class Asked:
    """The places of a board's things that wishes ask for."""

    def __init__(self, room: FreeRoom) -> None:
        self.room = room
        self._alone = [room.board.replace(items=(item,)) for item in room.board.items]
        self._wishes: dict[int, list[Wish]] = {}
        for wish in room.board.wishes:
            (item, *more) = wish.items
            if wish.kind in _OWN and not (more or wish.others) and room.board.items[item].fixed is None:
                self._wishes.setdefault(item, []).append(wish.replace(items=(0,)))
        fixed = {number: each.fixed for number, each in enumerate(room.board.items) if each.fixed is not None}
        stated = [(*fixed.get(number, (0, 0)), 0) for number in range(len(room.board.items))]
        self._bits: dict[int, list[int]] = {}
        for item in self._wishes:
            every = [room.of(item, shape, stated, fixed) for shape in range(len(room.board.items[item].shapes))]
            bits = self._best(item, every)
            if any(bits):
                self._bits[item] = bits

    def of_ways(self, ways: Sequence[Group], free: Sequence[int]) -> Sequence[int]:
        """Of the places of a group in each of its ways those that are asked for of all things in it; all where there are none and it is one
        thing."""
        if not any(item in self._bits for item, *_ in ways[0]):
            return free
        left = [self._of_group(group, bits) for group, bits in zip(ways, free, strict=True)]
        return left if any(left) or len(ways[0]) > 1 else free

    def awry(self, at: Sequence[At]) -> list[int]:
        """The things that don't stand at one of their places."""
        step = self.room.step
        here = {
            item: self.room.crossing([at[item][0] // step * step], [at[item][1] // step * step]) for item in self._bits
        }
        return [item for item, bits in self._bits.items() if not bits[at[item][2]] & here[item]]

    def _of_group(self, group: Group, bits: int) -> int:
        for item, dx, dy, shape in group:
            if item in self._bits:
                bits &= self.room.seen_from(self._bits[item][shape], dx, dy)
        return bits

    def _best(self, item: int, every: list[int]) -> list[int]:
        """By shape those of the places at which the item would miss least; none of a shape in which it always misses more."""
        room = self.room
        xs, ys = (range(0, room.step * many, room.step) for many in (room.columns, room.rows))
        found: list[tuple[int, int]] = []
        for shape, bits in enumerate(every):
            across = {x: self._missed(item, (x, 0, shape)) for x in xs}
            along = {y: self._missed(item, (0, y, shape)) for y in ys}
            x, y = min(across, key=across.__getitem__), min(along, key=along.__getitem__)
            columns = [each for each in xs if across[each] == across[x]]
            rows = [each for each in ys if along[each] == along[y]]
            found.append((self._missed(item, (x, y, shape)), room.crossing(columns, rows) & bits))
        least = min((missed for missed, bits in found if bits), default=0)
        return [bits if missed == least else 0 for missed, bits in found]

    def _missed(self, item: int, at: At) -> int:
        return sum(missed(self._alone[item], wish, [at]) for wish in self._wishes[item])
