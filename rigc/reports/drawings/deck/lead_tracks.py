"""Ways that share a lane -> the same ways drawn side by side, so that each can be followed by eye."""

from __future__ import annotations

from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.shapes import Point

PITCH = 1.3
"""From lead to lead within a lane, in mm on paper."""

_SHORT = 2.0  # on paper: what is no longer than that stays in place

_Track = tuple[float, float, float]  # y, left and right of a stretch that is drawn


def side_by_side(ways: tuple[Way, ...], scale: float) -> tuple[Way, ...]:
    """Stretches in x that would lie on one another get tracks of their own. Plugs and passages stay in place."""
    tracks: list[_Track] = []
    drawn = {way.mark: _on_tracks(way, tracks, scale) for way in sorted(ways, key=_width)}
    return tuple(drawn[way.mark] for way in ways)


def _width(way: Way) -> tuple[float, str]:
    """The narrow ones first: they stay on the lane itself."""
    across = [x for x, _ in way.points]
    return max(across) - min(across), way.mark


def _on_tracks(way: Way, tracks: list[_Track], scale: float) -> Way:
    points: list[Point] = [way.points[0]]
    above: list[bool] = []
    for at, side in enumerate(way.above):
        (x1, y1), (x2, y2) = way.points[at], way.points[at + 1]
        y = y1
        if _moves(way, at, scale):
            y = _track(tracks, y1, min(x1, x2), max(x1, x2), PITCH * scale)
        if y == y1:
            points.append((x2, y2))
            above.append(side)
            continue
        if _bends(way, at, at - 1):
            points[-1] = (x1, y)
        else:
            points.append((x1, y))
            above.append(side)
        points += [(x2, y)] if _bends(way, at, at + 1) else [(x2, y), (x2, y2)]
        above += [side] * (len(points) - 1 - len(above))
    return Way(way.mark, way.signal, way.jacks, tuple(points), tuple(above), way.make)


def _moves(way: Way, at: int, scale: float) -> bool:
    """Whether a stretch may leave its place: it runs in x, is long enough, and starts and ends at no jack."""
    (x1, y1), (x2, y2) = way.points[at], way.points[at + 1]
    inner = 0 < at < len(way.above) - 1 and way.above[at] is not way.under
    return inner and abs(y1 - y2) < 0.05 and abs(x1 - x2) > _SHORT * scale


def _bends(way: Way, at: int, other: int) -> bool:
    """Whether a neighbouring stretch runs in y on the same side of the deck: then it just ends sooner or later."""
    upright = way.points[other][0] == way.points[other + 1][0]
    return upright and way.above[at] is way.above[other] and 0 < other < len(way.above) - 1


def _track(tracks: list[_Track], y: float, left: float, right: float, pitch: float) -> float:
    """The height nearest to y that is free from left to right; it is taken from now on."""
    step = 0
    while not _free(tracks, y + _offset(step, pitch), left, right, pitch):
        step += 1
    tracks.append((y + _offset(step, pitch), left, right))
    return tracks[-1][0]


def _free(tracks: list[_Track], y: float, left: float, right: float, pitch: float) -> bool:
    near = (track for track in tracks if abs(track[0] - y) < pitch * 0.95)
    return not any(left < end + pitch and start < right + pitch for _, start, end in near)


def _offset(step: int, pitch: float) -> float:
    """0, 1, -1, 2, -2... pitches."""
    return pitch * ((step + 1) // 2) * (1 if step % 2 else -1)
