"""Sizes and counts -> the least number of raws if raws could be split: a bound below, and a plan to round (Gilmore and Gomory 1961).

Patterns are made as they are needed: the one that is worth most at the present prices of the sizes enters the basis.
"""

from __future__ import annotations

from rigc.record import Record
from rigc.solvers.cutting.demand import Demand, Raw
from rigc.solvers.cutting.worthiest_pattern import WorthiestPattern

SCALE = 10**9
"""Prices are rounded down to whole parts of this, so that the bound is proved in whole numbers, whatever floats lost."""
TURNS = 600


class Relaxation(Record):
    """`bound` raws are needed at least, before rounding up to `least`; `raws` are whole ones of its plan, none too many."""

    bound: float
    least: int
    raws: tuple[Raw, ...]


def relaxation(wanted: Demand) -> Relaxation | None:
    """None if it was given up: too many patterns, or too many turns."""
    basis = _Basis(wanted)
    for _ in range(TURNS):
        prices = tuple(max(0, int(price * SCALE)) for price in basis.prices())
        best = WorthiestPattern(wanted, prices)
        if best.given_up:
            return None
        if best.worth <= SCALE * (1 + 1e-7) or not basis.enter(best.found):
            return _result(wanted, basis, prices, max(best.worth, SCALE))
    return None


def _result(wanted: Demand, basis: _Basis, prices: tuple[int, ...], most: int) -> Relaxation:
    """The bound of weak duality: prices at which no pattern is worth more than `most`, over that."""
    value = sum(price * count for price, count in zip(prices, wanted.counts, strict=True))
    return Relaxation(value / most, -(-value // most), tuple(_whole(wanted, basis)))


def _whole(wanted: Demand, basis: _Basis) -> list[Raw]:
    raws: list[Raw] = []
    for pattern, times in zip(basis.patterns, basis.times, strict=True):
        pieces = tuple(size for size, count in zip(wanted.sizes, pattern, strict=True) for _ in range(count))
        raws += [pieces] * int(times + 1e-9)
    return raws


class _Basis:
    """One pattern for each size, how often each is used, and the inverse of the square that they make."""

    def __init__(self, wanted: Demand) -> None:
        span = range(len(wanted.sizes))
        fits = [min(wanted.length // size, count) for size, count in zip(wanted.sizes, wanted.counts, strict=True)]
        self.patterns = [[fits[at] if at == row else 0 for at in span] for row in span]
        self.times = [count / fit for count, fit in zip(wanted.counts, fits, strict=True)]
        self._inverse = [[1 / fits[at] if at == row else 0.0 for at in span] for row in span]

    def prices(self) -> list[float]:
        """What a piece of each size is worth, in raws."""
        return [sum(column) for column in zip(*self._inverse, strict=True)]

    def enter(self, pattern: list[int]) -> bool:
        """Puts a pattern in place of the one that it uses up first; False if none would be."""
        used = [sum(each * count for each, count in zip(row, pattern, strict=True)) for row in self._inverse]
        ratios = [(times / use, at) for at, (times, use) in enumerate(zip(self.times, used, strict=True)) if use > 1e-9]
        if not ratios:
            return False
        step, leaves = min(ratios)
        lead = [each / used[leaves] for each in self._inverse[leaves]]
        for at, use in enumerate(used):
            if at != leaves and use:
                self._inverse[at] = [each - use * other for each, other in zip(self._inverse[at], lead, strict=True)]
                self.times[at] -= use * step
        self._inverse[leaves], self.times[leaves], self.patterns[leaves] = lead, step, list(pattern)
        return True
