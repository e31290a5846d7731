"""A worth for each size -> the pieces on one raw that are worth most together, by branch and bound."""

from __future__ import annotations

from rigc.solvers.cutting.demand import Demand

STEPS = 40_000
"""So many steps are taken before the search for one pattern is given up."""
MOST_SIZES = 300
"""With more sizes it is not tried: it would go that deep."""


class WorthiestPattern:
    """The best pattern for worths in whole numbers; `found` counts pieces by size, `worth` is its worth.

    `given_up` tells that the steps ran out: `worth` is then no more than the best that was met.
    """

    def __init__(self, wanted: Demand, worths: tuple[int, ...]) -> None:
        order = sorted(range(len(worths)), key=lambda each: (-worths[each] / wanted.sizes[each], each))
        self._order = [each for each in order if worths[each] > 0]
        self._sizes = [wanted.sizes[each] for each in self._order]
        self._worths = [worths[each] for each in self._order]
        self._most = [wanted.counts[each] for each in self._order]
        self._now = [0] * len(self._order)
        self._best = list(self._now)
        self._steps = STEPS if len(self._order) <= MOST_SIZES else 0
        self.worth = 0
        self._extend(0, wanted.length, 0)
        self.given_up = self._steps <= 0
        self.found = [0] * len(worths)
        for at, each in enumerate(self._order):
            self.found[each] = self._best[at]

    def _extend(self, at: int, room: int, worth: int) -> None:
        self._steps -= 1
        if worth > self.worth:
            self.worth = worth
            self._best = list(self._now)
        if at == len(self._order) or self._steps <= 0:
            return
        if worth + room * self._worths[at] // self._sizes[at] <= self.worth:
            return
        for count in range(min(room // self._sizes[at], self._most[at]), -1, -1):
            self._now[at] = count
            self._extend(at + 1, room - count * self._sizes[at], worth + count * self._worths[at])
        self._now[at] = 0
