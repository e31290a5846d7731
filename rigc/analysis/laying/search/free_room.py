"""Where everything stands -> all places of the grid at which one more thing is in nobody's way: a bit for each place.

All bits of a side of the deck are one whole number, row after row, so that a thing blocks its room for another with one shift.
What is round counts as too small here (see `forbidden`), and tiers as if they lifted nothing: who takes a place asks the rules once more.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from rigc.analysis.laying.search.board import Area
from rigc.analysis.laying.search.ground import At, Ground
from rigc.analysis.laying.search.solver.forbidden import forbidden, parted

_Stamp = tuple[int, int, int]  # bits, and the column and row of the first
_SOME = re.compile(rb"[^\0]")  # a byte that has bits
_KEPT_BITS = 1 << 27
"""Of the rectangles that were asked for so many bits are kept: 16 MB."""
_BITS = tuple(tuple(bit for bit in range(8) if byte >> bit & 1) for byte in range(256))


class FreeRoom:
    """The free places of a board's things, by item and shape."""

    def __init__(self, ground: Ground, most: int | None = None) -> None:
        """On the board's own grid; where that has more than `most` places, on as coarse a one as it must be."""
        self.ground, self.board = ground, ground.board
        self.step = step = self.board.step
        while most is not None and (self.board.width // step) * (self.board.depth // step) > most:
            step += self.board.step
        self.step = step
        self.columns, self.rows = self.board.width // step + 1, self.board.depth // step + 1
        self._level = self.board.replace(tiers=())
        self._open = Ground(self.board.replace(kept_free=(), reserved=()))
        self._gaps = {(each.one, each.other): each.gap for each in self.board.partings}
        self._areas: dict[tuple[int, int, int, int], list[Area]] = {}
        self._stamps: dict[tuple[int, int, int, int, int, int], _Stamp] = {}
        self._allowed: dict[tuple[int, int], int] = {}
        self._boxes: dict[Area, int] = {}
        reach = self._reach() // step + 2
        self.widest = reach * step  # between the corners of a group
        self.stride = self.columns + reach
        self._most_boxes = _KEPT_BITS // (self.rows * self.stride)
        self._row = (1 << self.columns) - 1
        self._starts = 1  # a bit at the start of each row, of more rows than there are
        rows = 1
        while rows < self.rows + reach:
            self._starts |= self._starts << rows * self.stride
            rows *= 2
        self._every_row = self._starts_of(self.rows)

    def of(self, item: int, shape: int, at: Sequence[At], standing: Iterable[int]) -> int:
        """The bits of the places at which an item in a shape is in nobody's way of those that are standing."""
        blocked = 0
        beside = self.ground.beside[item]
        for other in standing:
            if other in beside:
                blocked |= self.blocked(item, shape, other, at[other])
        return self.alone(item, shape) & ~blocked

    def of_group(self, group: Sequence[tuple[int, int, int, int]], at: Sequence[At], standing: Iterable[int]) -> int:
        """The bits of the corners at which a group has room: items, each with its corner seen from the group's and its shape."""
        free = -1
        for item, dx, dy, shape in group:
            free &= self.seen_from(self.of(item, shape, at, standing), dx, dy)
            if not free:
                break
        return free

    def alone(self, item: int, shape: int) -> int:
        """The bits of the places at which an item in a shape is on its ground, whatever else stands."""
        if (item, shape) not in self._allowed:
            self._allowed[item, shape] = self._allowed_alone(item, shape)
        return self._allowed[item, shape]

    def rows_on_ground(self, item: int, shape: int) -> list[int] | None:
        """The y on the board's grid at which an item in a shape is held, low and near enough, in order; None where it is so everywhere."""
        it, solid = self.board.items[item], self.ground.solids[item][shape]
        if it.fixed is not None or (not (it.grip or it.rearmost) and it.foremost is None):
            return None
        left, front, _, rear = solid.reach
        first = -(front // self.board.step) * self.board.step
        ys = range(first, self.board.depth - rear + 1, self.board.step)
        return [y for y in ys if not self._open.alone(item, (-left, y, shape))]

    def blocked(self, item: int, shape: int, other: int, there: At) -> int:
        """The bits of the places at which an item in a shape has another, which stands there, in its way."""
        step = self.step
        column, aside = divmod(there[0], step)
        row, along = divmod(there[1], step)
        key = item, shape, other, there[2], aside, along
        stamp = self._stamps.get(key)
        if stamp is None:
            stamp = self._stamps[key] = self._stamp(*key)
        bits, first, front = stamp
        far = column + first + (row + front) * self.stride
        return bits << far if far >= 0 else bits >> -far

    def inside(self, area: Area) -> int:
        """The bits of the places inside an open rectangle; the same few are asked for again and again."""
        cells = self._on_deck(area)
        bits = self._boxes.get(cells)
        if bits is None:
            if len(self._boxes) >= self._most_boxes:
                self._boxes.clear()
            bits = self._boxes[cells] = self._box(*cells)
        return bits

    def seen_from(self, bits: int, dx: int, dy: int) -> int:
        """The bits of the corners of a group in which an item stands so far from it, from those of the item's own."""
        far = dx // self.step + dy // self.step * self.stride
        return bits >> far if far >= 0 else bits << -far

    def spot(self, bits: int) -> tuple[int, int]:
        """The first of these places."""
        y, x = divmod((bits & -bits).bit_length() - 1, self.stride)
        return x * self.step, y * self.step

    def areas(self, one: int, its: int, other: int, shape: int) -> list[Area]:
        """Where the corner of another item may not be, seen from one's, each in a shape: open rectangles."""
        key = one, its, other, shape
        if key not in self._areas:
            self._areas[key] = self._forbidden(*key)
        return self._areas[key]

    def places(self, free: int, xs: Iterable[int], ys: Iterable[int]) -> Iterator[tuple[int, int]]:
        """Of free places those that touch something, or lie at one of these x or y, in both directions."""
        step, stride = self.step, self.stride
        column, row = self._in_columns(xs), self._in_rows(ys)
        across = free & (~((free << 1) & (free >> 1)) | column * self._every_row)
        found = across & (~((free << stride) & (free >> stride)) | row)
        for some in _SOME.finditer(found.to_bytes((found.bit_length() + 7) // 8, "little")):
            for bit in _BITS[some[0][0]]:
                y, x = divmod(8 * some.start() + bit, stride)
                yield x * step, y * step

    def crossing(self, xs: Iterable[int], ys: Iterable[int]) -> int:
        """The bits of the places at one of these x and one of these y."""
        return self._in_columns(xs) * self._every_row & self._in_rows(ys)

    def _in_columns(self, xs: Iterable[int]) -> int:
        """A bit in the first row for each of these x that lies on the grid."""
        column = 0
        for x in xs:
            if 0 <= x <= self.board.width and x % self.step == 0:
                column |= 1 << x // self.step
        return column

    def _in_rows(self, ys: Iterable[int]) -> int:
        """All bits of the rows at these y that lie on the grid."""
        row = 0
        for y in ys:
            if 0 <= y <= self.board.depth and y % self.step == 0:
                row |= self._row << y // self.step * self.stride
        return row

    def _allowed_alone(self, item: int, shape: int) -> int:
        board, solid, it = self.board, self.ground.solids[item][shape], self.board.items[item]
        left, front, right, rear = solid.reach
        bits = self.inside((-left - 1, -front - 1, board.width - right + 1, board.depth - rear + 1))
        for area in board.kept_free if it.under else (*board.kept_free, *board.reserved):
            bits &= ~self.inside((area[0] - solid.width, area[1] - solid.depth, area[2], area[3]))
        if not it.grip and it.foremost is None and (it.under or not (board.tiers or it.rearmost)):
            return bits
        for row in range(self.rows):
            if self._open.alone(item, (-left, row * self.step, shape)):
                bits &= ~(self._row << row * self.stride)
        return bits

    def _stamp(self, item: int, shape: int, other: int, its: int, aside: int, along: int) -> _Stamp:
        """What another item in a shape blocks, seen from its place."""
        areas = [self._cells(area, aside, along) for area in self.areas(other, its, item, shape)]
        areas = [area for area in areas if area[0] < area[2] and area[1] < area[3]]
        if not areas:
            return 0, 0, 0
        first, front = min(area[0] for area in areas), min(area[1] for area in areas)
        bits = 0
        for left, near, right, rear in areas:
            bits |= self._box(left - first, near - front, right - first, rear - front)
        return bits, first, front

    def _cells(self, area: Area, aside: int, along: int) -> Area:
        """The columns and rows inside an open rectangle, the ends not counted."""
        step = self.step
        return (
            (area[0] + aside) // step + 1,
            (area[1] + along) // step + 1,
            -(-(area[2] + aside) // step),
            -(-(area[3] + along) // step),
        )

    def _on_deck(self, area: Area) -> Area:
        """The columns and rows of the grid inside an open rectangle, the ends not counted."""
        left, front, right, rear = self._cells(area, 0, 0)
        return max(0, left), max(0, front), min(self.columns, right), min(self.rows, rear)

    def _box(self, left: int, front: int, right: int, rear: int) -> int:
        if left >= right or front >= rear:
            return 0
        row = ((1 << right - left) - 1) << left
        return (row * self._starts_of(rear - front)) << front * self.stride

    def _starts_of(self, rows: int) -> int:
        return self._starts & ((1 << rows * self.stride) - 1)

    def _forbidden(self, one: int, its: int, other: int, shape: int) -> list[Area]:
        board, ground = self._level, self.ground
        solid, second = ground.solids[one][its], ground.solids[other][shape]
        gap = self._gaps.get((one, other), self._gaps.get((other, one)))
        areas = [] if gap is None else parted(solid, second, gap)
        if board.items[one].under == board.items[other].under:
            areas += forbidden(board, solid, second)
        return areas

    def _reach(self) -> int:
        """No thing blocks more of a row or a column for another."""
        board = self.board
        solids = [solid for solids in self.ground.solids for solid in solids]
        longest = max((max(each.right - each.left, each.rear - each.front) for each in solids), default=0)
        return 2 * (longest + max(board.aside, board.behind, board.knob, *self._gaps.values(), 0))
