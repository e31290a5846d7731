"""Rectangles -> the pairs that may touch, without comparing each with each."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.model.geometry.rectangle import Rectangle


def neighbours(rectangles: Sequence[Rectangle], within_mm: float = 0.0) -> list[tuple[int, int]]:
    """The pairs of places in the sequence, lower first and in order, whose rectangles overlap or are nearer than that.

    A line sweeps over the board, along the axis on which fewer rectangles lie side by side; each is compared only with
    those that begin before the line has left it.
    """
    spans = [(each.x_mm, each.right_mm, each.y_mm, each.rear_mm, place) for place, each in enumerate(rectangles)]
    if _crowd([span[:2] for span in spans]) > _crowd([span[2:4] for span in spans]):
        spans = [(y, rear, x, right, place) for x, right, y, rear, place in spans]
    spans.sort()
    pairs: list[tuple[int, int]] = []
    for at, (_, end, front, rear, place) in enumerate(spans):
        for next_at in range(at + 1, len(spans)):
            start, last, other_front, other_rear, other = spans[next_at]
            if end - start <= -within_mm:
                break
            aside = min(rear, other_rear) - max(front, other_front)
            if aside > -within_mm and last - start > -within_mm:
                pairs.append((place, other) if place < other else (other, place))
    return sorted(pairs)


def _crowd(spans: Sequence[tuple[float, float]]) -> float:
    """How many spans lie beside one spot, on average over all of them."""
    if not spans:
        return 0.0
    extent = max(end for _, end in spans) - min(start for start, _ in spans)
    return sum(end - start for start, end in spans) / extent if extent > 0 else float(len(spans))
