"""Rectangles and a strip of a width -> where they all stand within a depth: the lowest corner is filled first, and what fits there is tried in turn.

It stops after so many steps (rectangles laid down), or when no way is left, which then is proved.
"""

from __future__ import annotations

from rigc.record import Record

Piece = tuple[int, int]  # width, depth
Laid = tuple[int, int, int, int]  # number of the piece, x, y, 1 if it is turned by a quarter


class Packed(Record):
    """Where each piece stands (None: no way was found), whether that is `proved` to be all that can be, and the steps taken."""

    laid: tuple[Laid, ...] | None
    proved: bool
    steps: int


class _Search:
    def __init__(self, pieces: tuple[Piece, ...], width: int, depth: int, turning: bool, effort: int) -> None:
        self.pieces, self.width, self.depth, self.turning, self.left = pieces, width, depth, turning, effort
        self.spare = width * depth - sum(wide * deep for wide, deep in pieces)
        self.laid: list[Laid] = []
        self.unlaid = sorted(
            range(len(pieces)), key=lambda each: (-pieces[each][0] * pieces[each][1], -max(pieces[each]), each)
        )

    def fill(self, outline: list[tuple[int, int, int]], wasted: int) -> bool:
        """Lays the rest on an outline of steps (x, width, y); more `wasted` area than there is to spare is no way."""
        if not self.unlaid:
            return True
        at = min(range(len(outline)), key=lambda each: (outline[each][2], outline[each][0]))
        x, room, y = outline[at]
        tried: set[Piece] = set()
        for number in tuple(self.unlaid):
            for wide, deep, turned in self._ways(number):
                if wide > room or y + deep > self.depth or (wide, deep) in tried:
                    continue
                if self.left <= 0:
                    return False
                self.left -= 1
                tried.add((wide, deep))
                self.unlaid.remove(number)
                self.laid.append((number, x, y, turned))
                if self.fill(_with(outline, at, wide, deep), wasted):
                    return True
                self.laid.pop()
                self._back(number)
        return self._raised(outline, at, wasted)

    def _raised(self, outline: list[tuple[int, int, int]], at: int, wasted: int) -> bool:
        """The corner stays empty up to its lower neighbour."""
        x, room, y = outline[at]
        beside = [outline[each][2] for each in (at - 1, at + 1) if 0 <= each < len(outline)]
        up = min(beside, default=self.depth)
        if up <= y or wasted + room * (up - y) > self.spare or self.left <= 0:
            return False
        return self.fill(_joined([*outline[:at], (x, room, up), *outline[at + 1 :]]), wasted + room * (up - y))

    def _ways(self, number: int) -> tuple[tuple[int, int, int], ...]:
        wide, deep = self.pieces[number]
        return ((wide, deep, 0), (deep, wide, 1)) if self.turning and wide != deep else ((wide, deep, 0),)

    def _back(self, number: int) -> None:
        """A piece returns to its place in the order of size."""
        key = (-self.pieces[number][0] * self.pieces[number][1], -max(self.pieces[number]), number)
        at = sum(
            (-self.pieces[each][0] * self.pieces[each][1], -max(self.pieces[each]), each) < key for each in self.unlaid
        )
        self.unlaid.insert(at, number)


def pack(pieces: tuple[Piece, ...], width: int, depth: int, effort: int, turning: bool = False) -> Packed:
    """Whether and how all pieces go into the rectangle; `turning` lets each be turned by a quarter."""
    search = _Search(pieces, width, depth, turning, effort)
    if search.spare < 0:
        return Packed(None, True, 0)
    found = search.fill([(0, width, 0)], 0)
    return Packed(tuple(sorted(search.laid)) if found else None, found or search.left > 0, effort - search.left)


def least_depth(
    pieces: tuple[Piece, ...], width: int, effort: int, turning: bool = False, step: int = 1
) -> Packed | None:
    """The least depth in steps of the grid, found from above; None if a piece is wider than the strip."""
    if any((min(piece) if turning else piece[0]) > width for piece in pieces):
        return None
    low = max(max(min(piece) if turning else piece[1] for piece in pieces), -(-sum(w * d for w, d in pieces) // width))
    high = sum(piece[1] for piece in pieces)
    best = pack(pieces, width, high, effort, turning)
    low = -(-low // step) * step
    while low < high:
        middle = (low + high) // 2 // step * step
        found = pack(pieces, width, middle, effort, turning)
        if found.laid is None:
            low = middle + step
        else:
            best, high = found, middle
    return best


def _with(outline: list[tuple[int, int, int]], at: int, wide: int, deep: int) -> list[tuple[int, int, int]]:
    x, room, y = outline[at]
    rest = [(x + wide, room - wide, y)] if wide < room else []
    return _joined([*outline[:at], (x, wide, y + deep), *rest, *outline[at + 1 :]])


def _joined(outline: list[tuple[int, int, int]]) -> list[tuple[int, int, int]]:
    """Neighbouring steps of one height are one."""
    joined = outline[:1]
    for x, room, y in outline[1:]:
        last = joined[-1]
        if last[2] == y:
            joined[-1] = (last[0], last[1] + room, y)
        else:
            joined.append((x, room, y))
    return joined
