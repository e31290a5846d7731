"""The stretches of many leads -> which of one group meet which of another: where they cross, and how they run side by side.

Stretches of one lane (one y, or one x) are filed together and sorted, so that only those that do meet are looked at: a
thousand leads in three lanes cost what their meetings cost, not what their pairs would.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence

from rigc.analysis.routes.stretches import Side, Together, askew_crossings

Sides = tuple[Side, ...]
"""The stretches of a lead over the deck and below it: only those of one side meet."""

Pair = tuple[int, int]
_Stretch = tuple[float, float, float]


def meetings(sides: Sequence[Sides], ones: Sequence[int], others: Sequence[int], within: float) -> dict[Pair, Together]:
    """By the places in `sides` of one and other: all that they do beside each other, in tenths of a millimetre."""
    angles: dict[Pair, list[float]] = {}
    runs: dict[Pair, list[tuple[float, float]]] = {}
    for level in range(len(sides[0]) if sides else 0):
        along_x = _Lanes((place, each) for place in others for each in sides[place][level].along_x)
        along_y = _Lanes((place, each) for place in others for each in sides[place][level].along_y)
        for one in ones:
            mine = sides[one][level]
            for stretches, beside, across in ((mine.along_x, along_x, along_y), (mine.along_y, along_y, along_x)):
                for other, long, apart in _beside(stretches, beside, within):
                    runs.setdefault((one, other), []).append((long, apart))
                    if apart == 0:
                        angles.setdefault((one, other), []).append(0.0)
                for other in _crossed(stretches, across):
                    angles.setdefault((one, other), []).append(90.0)
        for pair, angle in _askew(sides, level, ones, others):
            angles.setdefault(pair, []).append(angle)
    alike: dict[
        tuple[tuple[float, ...], tuple[tuple[float, float], ...]], Together
    ] = {}  # most pairs cross once, squarely
    found: dict[Pair, Together] = {}
    for pair in angles.keys() | runs.keys():
        key = tuple(angles.get(pair, ())), tuple(runs.get(pair, ()))
        if key not in alike:
            alike[key] = Together(*key)
        found[pair] = alike[key]
    return found


class _Lanes:
    """Stretches along one axis, numbered as they come, filed by their lane, in each in the order of their starts."""

    def __init__(self, stretches: Iterable[tuple[int, _Stretch]]) -> None:
        filed: dict[float, list[tuple[float, float, int, int]]] = {}
        for number, (place, (at, low, high)) in enumerate(stretches):
            filed.setdefault(at, []).append((low, high, place, number))
        self._at = sorted(filed)
        self._lanes = [sorted(filed[at]) for at in self._at]
        self._starts = [[low for low, *_ in lane] for lane in self._lanes]
        self._longest = [max(high - low for low, high, *_ in lane) for lane in self._lanes]

    def touched(
        self, first: float, last: float, low: float, high: float
    ) -> Iterator[tuple[int, int, float, float, float]]:
        """The stretches of all lanes from `first` to `last` that reach into `low` to `high`: its number, whose, its lane, start and end."""
        for lane in range(bisect_left(self._at, first), bisect_right(self._at, last)):
            starts = self._starts[lane]
            begin = bisect_left(starts, low - self._longest[lane])
            for start, end, place, number in self._lanes[lane][begin : bisect_right(starts, high)]:
                if end >= low:
                    yield number, place, self._at[lane], start, end


def _beside(stretches: Iterable[_Stretch], lanes: _Lanes, within: float) -> Iterator[tuple[int, float, float]]:
    """Whose run is beside them, how long and how far apart; along both leads in the order of their ways."""
    for at, low, high in stretches:
        for _, other, there, start, end in sorted(lanes.touched(at - within, at + within, low, high)):
            long = min(high, end) - max(low, start)
            if long > 0:
                yield other, long, abs(at - there)


def _crossed(stretches: Iterable[_Stretch], lanes: _Lanes) -> Iterator[int]:
    for at, low, high in stretches:
        for _, other, *_ in lanes.touched(low, high, at, at):
            yield other


def _askew(
    sides: Sequence[Sides], level: int, ones: Sequence[int], others: Sequence[int]
) -> Iterator[tuple[Pair, float]]:
    """Crossings of which one stretch at least follows no axis; only jacks of things that stand askew have such."""
    slanting = [place for place in others if sides[place][level].askew]
    for one in ones:
        for other in others if sides[one][level].askew else slanting:
            for angle in askew_crossings(sides[one][level], sides[other][level]):
                yield (one, other), angle
