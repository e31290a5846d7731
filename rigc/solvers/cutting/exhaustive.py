"""Sizes and counts, and a number of raws -> a plan with no more raws, or the proof that there is none (bin completion)."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.solvers.cutting.demand import Demand, Raw

STEPS = 200_000
"""So many steps are taken before the search is given up."""
MOST_RAWS = 200
"""Beyond so many raws, or sizes, it is not tried: it would go that deep."""


class Exhaustive:
    """`found` is a plan with at most `raws` raws, or None; `given_up` tells that None proves nothing.

    Each raw takes the longest piece that is left. Only raws to which no further piece could be added are tried: a piece
    that has room may as well lie there.
    """

    def __init__(self, wanted: Demand, raws: int) -> None:
        self._wanted = wanted
        self._left = list(wanted.counts)
        self._steps = STEPS
        self._dead: set[tuple[int, ...]] = set()
        self._plan: list[Raw] = []
        small = max(raws, len(wanted.sizes)) <= MOST_RAWS
        self.found = self._plan if small and self._filled(raws * wanted.length - wanted.total) else None
        self.given_up = self.found is None and (not small or self._steps <= 0)

    def _filled(self, spare: int) -> bool:
        """Whether all pieces that are left go in if no more than `spare` of the raws' length is lost."""
        first = next((at for at, count in enumerate(self._left) if count), None)
        if first is None:
            return True
        state = tuple(self._left)
        if spare < 0 or self._steps <= 0 or state in self._dead:
            return False
        room = self._wanted.length - self._wanted.sizes[first]
        self._left[first] -= 1
        fills = sorted(self._fills(first, room, spare), key=lambda fill: fill[1])
        for taken, lost in fills:
            if self._steps <= 0:
                break
            self._take(taken, -1)
            sizes = self._wanted.sizes
            self._plan.append((sizes[first], *(sizes[at] for at, count in taken for _ in range(count))))
            if self._filled(spare - lost):
                return True
            self._plan.pop()
            self._take(taken, 1)
        self._left[first] += 1
        self._dead.add(state)
        return False

    def _take(self, taken: tuple[tuple[int, int], ...], sign: int) -> None:
        for at, count in taken:
            self._left[at] += sign * count

    def _fills(
        self, at: int, room: int, spare: int, shortest_left_out: int | None = None
    ) -> Iterator[tuple[tuple[tuple[int, int], ...], int]]:
        """What may lie beside, as (size, how many) and what is lost; none in which a left-out piece still had room."""
        self._steps -= 1
        sizes, left = self._wanted.sizes, self._left
        while at < len(sizes) and (not left[at] or sizes[at] > room):
            at += 1
        if at == len(sizes):
            if room <= spare and (shortest_left_out is None or room < shortest_left_out):
                yield (), room
            return
        if self._steps <= 0:
            return
        most = min(left[at], room // sizes[at])
        for count in range(most, -1, -1):
            out = sizes[at] if count < left[at] else shortest_left_out
            for taken, lost in self._fills(at + 1, room - count * sizes[at], spare, out):
                yield (((at, count), *taken) if count else taken), lost
