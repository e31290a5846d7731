"""The ways of leads below a deck -> bundles: one line for all leads in a lane, which leave it on a slant to their holes and jacks.

Leads drawn one by one in lanes a few millimetres apart cover each other at the scale of a page. So lanes that lie near each other
are drawn as one, a lane along a row of holes is drawn beside the row, and where leads leave a lane a short slant shows to which side
they go (IEC 61082, from memory). Where lanes cross and no lead turns, the upright one is gapped.
"""

from __future__ import annotations

from itertools import pairwise

from rigc.record import Record
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.segments import towards
from rigc.reports.drawings.shapes import Point

NEAR, BESIDE, SLANT, GAP = 1.7, 3.4, 1.2, 0.8
"""In mm on paper: lanes so near are one; so far beside a row of holes its lane is drawn; how far a slant goes; half a gap."""

_SHORT = 0.3

Stroke = tuple[Point, Point]


class End(Record):
    """Where a lead comes to the eye: its hole, or its jack (`port`), on paper."""

    at: Point
    mark: str
    port: str


class Run(Record):
    """A stretch of a lane in which as many leads run from end to end."""

    start: Point
    end: Point
    count: int


class Bundles(Record):
    """What is drawn of the leads below a deck: strokes that are seen, those that bodies cover, runs of several leads, ends."""

    seen: tuple[Stroke, ...]
    covered: tuple[Stroke, ...]
    runs: tuple[Run, ...]
    ends: tuple[End, ...]


class _Part(Record):
    """A stretch along an axis: `level` in x, else in y; its lane's coordinate, from where to where, and whose it is."""

    level: bool
    lane: float
    low: float
    high: float
    mark: str


def bundles(ways: tuple[Way, ...], view: View, bodies: tuple[Room, ...]) -> Bundles:
    """All leads that run below a deck, of one group."""
    paths = [(way.mark, points) for way in ways for points in _below(way, view)]
    holes = sorted({point for _, points in paths for point in (points[0], points[-1])})
    edge = Room(view.left, view.top, view.right, view.bottom)
    lanes = _Lanes(paths, holes, bodies, edge)
    parts: list[_Part] = []
    slants: set[Stroke] = set()
    for mark, points in paths:
        _lay(mark, lanes.moved(points), parts, slants)
    runs = _runs(parts)
    strokes = [stroke for run in _joined(runs) for stroke in _gapped(run, runs)] + sorted(slants)
    seen, covered = [], []
    for stroke in strokes:
        outside, inside = _split(stroke, bodies)
        seen += outside
        covered += inside
    return Bundles(tuple(seen), tuple(covered), tuple(run for run in runs if run.count > 1), _ends(ways, view))


def _below(way: Way, view: View) -> list[tuple[Point, ...]]:
    """Its stretches below the deck, on paper, without what has no length."""
    found = []
    for above, stretch in way.stretches():
        points = [view.point(*point) for point in stretch]
        if not above:
            kept = [points[0], *(b for a, b in pairwise(points) if abs(a[0] - b[0]) + abs(a[1] - b[1]) > 0.01)]
            if len(kept) > 1:
                found.append(tuple(kept))
    return found


def _ends(ways: tuple[Way, ...], view: View) -> tuple[End, ...]:
    found = []
    for way in ways:
        for above, stretch in way.stretches():
            if above:
                continue
            for point in (stretch[0], stretch[-1]):
                port = next(
                    (str(way.ports[at]) for at in (0, 1) if point == way.points[-at] and not way.above[-at]), ""
                )
                found.append(End(view.point(*point), way.shown, port))
    return tuple(dict.fromkeys(found))


class _Lanes:
    """Where each lane is drawn."""

    def __init__(
        self, paths: list[tuple[str, tuple[Point, ...]]], holes: list[Point], bodies: tuple[Room, ...], edge: Room
    ) -> None:
        self._holes, self._bodies, self._edge = holes, bodies, edge
        self._drawn: dict[tuple[bool, float], float] = {}
        spans: dict[tuple[bool, float], list[tuple[float, float]]] = {}
        for _, points in paths:
            for start, end in pairwise(points):
                level = _level(start, end)
                lane = start[1] if level else start[0]
                low, high = sorted((start[0], end[0]) if level else (start[1], end[1]))
                spans.setdefault((level, round(lane, 2)), []).append((low, high))
        taken: dict[bool, list[tuple[float, float, float]]] = {True: [], False: []}
        for level in (True, False):
            for group in _groups(sorted(lane for way, lane in spans if way is level)):
                around = [span for lane in group for span in spans[level, lane]]
                low, high = min(span[0] for span in around), max(span[1] for span in around)
                wish = _middle(group, spans, level)
                at = self._free(level, wish, low, high, taken[level])
                taken[level].append((at, low, high))
                for lane in group:
                    self._drawn[level, lane] = at

    def moved(self, points: tuple[Point, ...]) -> tuple[Point, ...]:
        """The same way along the lanes as drawn; its ends stay where they are."""
        lanes: list[tuple[bool, float]] = []
        for start, end in pairwise(points):
            level = _level(start, end)
            drawn = self._drawn[level, round(start[1] if level else start[0], 2)]
            if lanes and lanes[-1][0] is level:
                lanes[-1] = (level, drawn)
            else:
                lanes.append((level, drawn))
        corners = [(other[1], one[1]) if one[0] else (one[1], other[1]) for one, other in pairwise(lanes)]
        first, last = lanes[0], lanes[-1]
        start = (points[0][0], first[1]) if first[0] else (first[1], points[0][1])
        end = (points[-1][0], last[1]) if last[0] else (last[1], points[-1][1])
        return _without_turns_back((points[0], start, *corners, end, points[-1]))

    def _free(
        self, level: bool, wish: float, low: float, high: float, taken: list[tuple[float, float, float]]
    ) -> float:
        """The coordinate nearest to the wish that runs over no hole, along no edge of a body and along no other lane."""
        on_row = sum(
            abs((y if level else x) - wish) < 0.6 and low - 0.1 < (x if level else y) < high + 0.1
            for x, y in self._holes
        )
        steps = [0.0]
        for far in range(1, 12):
            steps += [far * 0.5, -far * 0.5]
        if level and on_row > 1:
            steps = sorted(steps, key=lambda step: (abs(abs(step) - BESIDE), -step))
        return next((wish + step for step in steps if not self._hindered(level, wish + step, low, high, taken)), wish)

    def _hindered(
        self, level: bool, at: float, low: float, high: float, taken: list[tuple[float, float, float]]
    ) -> bool:
        edge = self._edge
        if not (edge.top + 0.9 < at < edge.bottom - 0.9 if level else edge.left + 0.9 < at < edge.right - 0.9):
            return True
        if any(abs(other - at) < NEAR and low < end + 1 and start < high + 1 for other, start, end in taken):
            return True
        for x, y in self._holes:
            across, along = (y, x) if level else (x, y)
            if abs(across - at) < 1.3 and low + 0.5 < along < high - 0.5:
                return True
        for body in self._bodies:
            edges = (body.top, body.bottom) if level else (body.left, body.right)
            start, end = (body.left, body.right) if level else (body.top, body.bottom)
            if low < end and start < high and any(abs(edge - at) < 0.9 for edge in edges):
                return True
        return False


def _level(start: Point, end: Point) -> bool:
    return abs(start[0] - end[0]) >= abs(start[1] - end[1])


def _groups(lanes: list[float]) -> list[list[float]]:
    groups: list[list[float]] = []
    for lane in lanes:
        if groups and lane - groups[-1][0] < NEAR:
            groups[-1].append(lane)
        else:
            groups.append([lane])
    return groups


def _middle(group: list[float], spans: dict[tuple[bool, float], list[tuple[float, float]]], level: bool) -> float:
    """The lane of a group in which most of its length runs."""
    return max(group, key=lambda lane: (sum(high - low for low, high in spans[level, lane]), -lane))


def _without_turns_back(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """Without points on which nothing turns."""
    kept: list[Point] = []
    for point in points:
        if kept and abs(kept[-1][0] - point[0]) + abs(kept[-1][1] - point[1]) < 0.05:
            continue
        kept.append(point)
    return tuple(kept)


def _lay(mark: str, points: tuple[Point, ...], parts: list[_Part], slants: set[Stroke]) -> None:
    """A way as stretches along its lanes, with a slant at each corner."""
    count = len(points) - 1
    cut_start, cut_end = [0.0] * count, [0.0] * count
    lengths = [abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in pairwise(points)]
    for at in range(count - 1):
        if _level(points[at], points[at + 1]) is _level(points[at + 1], points[at + 2]):
            continue
        room = min(
            SLANT,
            lengths[at] / (2 if at else 1),
            lengths[at + 1] / (2 if at + 1 < count - 1 else 1),
        )
        cut_end[at] = cut_start[at + 1] = room
    for at, (start, end) in enumerate(pairwise(points)):
        here, there = towards(start, end, cut_start[at]), towards(end, start, cut_end[at])
        level = _level(start, end)
        low, high = sorted((here[0], there[0]) if level else (here[1], there[1]))
        if high - low > 0.02:
            parts.append(_Part(level, round(start[1] if level else start[0], 3), low, high, mark))
        if cut_end[at] > 0.02:
            after = towards(points[at + 1], points[at + 2], cut_start[at + 1])
            slants.add(_rounded(min(there, after), max(there, after)))


def _rounded(one: Point, other: Point) -> Stroke:
    return (round(one[0], 2), round(one[1], 2)), (round(other[0], 2), round(other[1], 2))


def _runs(parts: list[_Part]) -> list[Run]:
    """The lanes cut where leads join or leave."""
    lanes: dict[tuple[bool, float], list[_Part]] = {}
    for part in parts:
        lanes.setdefault((part.level, part.lane), []).append(part)
    runs: list[Run] = []
    for (level, lane), inside in sorted(lanes.items()):
        cuts = sorted({round(at, 2) for part in inside for at in (part.low, part.high)})
        for low, high in pairwise(cuts):
            middle = (low + high) / 2
            count = len({part.mark for part in inside if part.low <= middle <= part.high})
            if count:
                start, end = ((low, lane), (high, lane)) if level else ((lane, low), (lane, high))
                if (
                    runs
                    and runs[-1].end == start
                    and runs[-1].count == count
                    and _level(runs[-1].start, start) is level
                ):
                    start = runs.pop().start
                runs.append(Run(start, end, count))
    return runs


def _joined(runs: list[Run]) -> list[Run]:
    """Runs that follow one another in a lane as one line."""
    lines: list[Run] = []
    for run in runs:
        if (
            lines
            and lines[-1].end == run.start
            and _level(lines[-1].start, lines[-1].end) is _level(run.start, run.end)
        ):
            lines[-1] = Run(lines[-1].start, run.end, 0)
        else:
            lines.append(Run(run.start, run.end, 0))
    return lines


def _gapped(line: Run, runs: list[Run]) -> list[Stroke]:
    """An upright line without what crosses it."""
    (x, top), (x2, bottom) = line.start, line.end
    if x != x2:
        return [(line.start, line.end)]
    crossing = sorted(
        other.start[1]
        for other in _joined([run for run in runs if run.start[1] == run.end[1]])
        if other.start[0] + GAP < x < other.end[0] - GAP and top + GAP < other.start[1] < bottom - GAP
    )
    strokes = []
    at = top
    for y in crossing:
        if y - GAP > at:
            strokes.append(((x, at), (x, y - GAP)))
        at = max(at, y + GAP)
    return [*strokes, ((x, at), (x, bottom))] if bottom > at else strokes


def _split(stroke: Stroke, bodies: tuple[Room, ...]) -> tuple[list[Stroke], list[Stroke]]:
    """What of it is to be seen, and what a body is before."""
    (x1, y1), (x2, y2) = stroke
    cuts = {0.0, 1.0}
    for body in bodies:
        for start, way, edges in ((x1, x2 - x1, (body.left, body.right)), (y1, y2 - y1, (body.top, body.bottom))):
            if abs(way) > 1e-9:
                cuts |= {part for edge in edges if 0 < (part := (edge - start) / way) < 1}
    seen: list[Stroke] = []
    covered: list[Stroke] = []
    for low, high in pairwise(sorted(cuts)):
        middle = (low + high) / 2
        x, y = x1 + (x2 - x1) * middle, y1 + (y2 - y1) * middle
        hidden = any(body.left < x < body.right and body.top < y < body.bottom for body in bodies)
        into = covered if hidden else seen
        piece = (
            (x1 + (x2 - x1) * low, y1 + (y2 - y1) * low),
            (x1 + (x2 - x1) * high, y1 + (y2 - y1) * high),
        )
        if into and into[-1][1] == piece[0]:
            into[-1] = (into[-1][0], piece[1])
        else:
            into.append(piece)
    return seen, covered
