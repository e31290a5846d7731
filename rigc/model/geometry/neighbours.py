"""Rectangles -> the pairs that may touch, without comparing each with each."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from rigc.model.geometry.rectangle import Rectangle


def neighbours(rectangles: Sequence[Rectangle], within_mm: float = 0.0) -> list[tuple[int, int]]:
    """The pairs of places in the sequence, lower first and in order, whose rectangles overlap or are nearer than that.

    A line sweeps over the board, along the axis on which fewer rectangles lie side by side; each is compared only with
    those that begin before the line has left it, and lie in a band of the board in which it lies, too.
    """
    spans = [(each.x_mm, each.right_mm, each.y_mm, each.rear_mm, place) for place, each in enumerate(rectangles)]
    if _crowd([span[:2] for span in spans]) > _crowd([span[2:4] for span in spans]):
        spans = [(y, rear, x, right, place) for x, right, y, rear, place in spans]
    spans.sort()
    pairs: list[tuple[int, int]] = []
    for number, band in _bands(spans, within_mm).items():
        for at, (lowest, (_, end, front, rear, place)) in enumerate(band):
            for next_at in range(at + 1, len(band)):
                other_lowest, (start, last, other_front, other_rear, other) = band[next_at]
                if end - start <= -within_mm:
                    break
                if number != (lowest if lowest > other_lowest else other_lowest):  # told in the first band of both
                    continue
                aside = (rear if rear < other_rear else other_rear) - (front if front > other_front else other_front)
                if aside > -within_mm and last - start > -within_mm:
                    pairs.append((place, other) if place < other else (other, place))
    return sorted(pairs)


_Span = tuple[float, float, float, float, int]
"""From where to where along the sweep, and across it; the place in the sequence."""


def _bands(spans: Sequence[_Span], within: float) -> dict[int, list[tuple[int, _Span]]]:
    """The spans in each band across the sweep that they reach, with room to both sides, each with the first of its bands."""
    found: dict[int, list[tuple[int, _Span]]] = {}
    if not spans:
        return found
    room = within / 2 + 1e-6
    width = 2 * (sum(rear - front for _, _, front, rear, _ in spans) / len(spans) + 2 * room)
    for span in spans:
        lowest, highest = floor((span[2] - room) / width), floor((span[3] + room) / width)
        for number in range(lowest, highest + 1):
            found.setdefault(number, []).append((lowest, span))
    return found


def _crowd(spans: Sequence[tuple[float, float]]) -> float:
    """How many spans lie beside one spot, on average over all of them."""
    if not spans:
        return 0.0
    extent = max(end for _, end in spans) - min(start for start, _ in spans)
    return sum(end - start for start, end in spans) / extent if extent > 0 else float(len(spans))
