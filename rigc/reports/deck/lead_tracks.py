"""Ways that share a lane -> the same ways drawn side by side, so that each can be followed by eye."""

from __future__ import annotations

from rigc.reports.deck.lead_ways import Way

PITCH = 1.3
"""From lead to lead within a lane, in mm on paper."""


def side_by_side(ways: tuple[Way, ...], scale: int) -> tuple[Way, ...]:
    """Each lane's leads on tracks of their own: a track holds leads that do not meet. Ends and passages stay in place."""
    pitch = PITCH * scale
    tracks: list[tuple[float, float, float]] = []  # y, left, right of each stretch that is drawn
    drawn = []
    for way in sorted(ways, key=_length):
        drawn.append(way if way.lane is None else _on_track(way, way.lane, tracks, pitch))
    order = {way.mark: at for at, way in enumerate(ways)}
    return tuple(sorted(drawn, key=lambda way: order[way.mark]))


def _length(way: Way) -> tuple[float, str]:
    """The short ones first: they stay nearest to the line itself."""
    return (0.0 if way.lane is None else abs(way.points[way.lane][0] - way.points[way.lane + 1][0])), way.mark


def _on_track(way: Way, lane: int, tracks: list[tuple[float, float, float]], pitch: float) -> Way:
    (x1, y), (x2, _) = way.points[lane], way.points[lane + 1]
    left, right = min(x1, x2), max(x1, x2)
    step = 0
    while any(
        abs(y + _offset(step, pitch) - other) < pitch * 0.95 and left < end + pitch and start < right + pitch
        for other, start, end in tracks
    ):
        step += 1
    at = y + _offset(step, pitch)
    tracks.append((at, left, right))
    before, after = way.points[: lane + 1], way.points[lane + 1 :]
    return way.replace(points=(*before, (x1, at), (x2, at), *after))


def _offset(step: int, pitch: float) -> float:
    """0, 1, -1, 2, -2... pitches."""
    return pitch * ((step + 1) // 2) * (1 if step % 2 else -1)
