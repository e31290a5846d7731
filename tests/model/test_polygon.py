"""Convex polygons against a general geometry library (shapely, a binding of the GEOS library), on random placements."""

from __future__ import annotations

from itertools import pairwise
from math import hypot
from random import Random

import pytest
from shapely import LineString, Polygon
from shapely.affinity import translate

from rigc.model.geometry.polygon import Polygon as Corners
from rigc.model.geometry.polygon import Spot, before, chord, crossed, gap, reach, turned

PLACEMENTS = 1000
CLOSE = 1e-6


def body(source: Random) -> Corners:
    """A body of random size, turned and shifted at random; every fourth stands straight."""
    width, depth = source.uniform(20, 200), source.uniform(20, 260)
    x, y, degrees = source.uniform(0, 400), source.uniform(0, 300), source.choice((0, *(source.uniform(-30, 30),) * 3))
    spots = (turned(spot, degrees) for spot in ((0.0, 0.0), (width, 0.0), (width, depth), (0.0, depth)))
    return tuple((x + across, y + along) for across, along in spots)


@pytest.mark.parametrize("part", range(4))
def test_overlaps_and_distances(part: int) -> None:
    source, met = Random(part), 0
    for _ in range(PLACEMENTS // 4):
        one, other = body(source), body(source)
        mine, theirs = Polygon(one), Polygon(other)
        into = reach(one, other)
        assert gap(one, other) == pytest.approx(mine.distance(theirs), abs=CLOSE)
        assert (into > CLOSE) == (mine.intersection(theirs).area > CLOSE)
        if into > CLOSE:
            met += 1
            assert _parts(mine, theirs, into + 1e-3)
            assert not _parts(mine, theirs, into * 0.99 - 1e-3)
    assert PLACEMENTS // 40 < met < PLACEMENTS // 4  # both kinds came up


def _parts(mine: Polygon, theirs: Polygon, far: float) -> bool:
    """Whether a shift that long, square to some side of one of them, parts two bodies; no other way parts them sooner."""
    ways = []
    for shape in (mine, theirs):
        spots = list(shape.exterior.coords)
        for (x1, y1), (x2, y2) in pairwise(spots):
            long = hypot(x2 - x1, y2 - y1)
            ways += [((y2 - y1) / long, (x1 - x2) / long), ((y1 - y2) / long, (x2 - x1) / long)]
    return any(translate(mine, x * far, y * far).intersection(theirs).area < CLOSE for x, y in ways)


@pytest.mark.parametrize("part", range(4))
def test_clearances(part: int) -> None:
    """What is free before a plug: the strip that it would sweep, cut with the body."""
    source, met = Random(100 + part), 0
    for _ in range(PLACEMENTS // 4):
        other, half = body(source), source.uniform(4, 14)
        start, way = (source.uniform(0, 500), source.uniform(0, 400)), turned((1.0, 0.0), source.uniform(0, 360))
        strip = Polygon(
            [
                _at(start, way, along, across)
                for along, across in ((-999, half), (999, half), (999, -half), (-999, -half))
            ]
        )
        common = strip.intersection(Polygon(other))
        free = before(other, start, way, half)
        if common.area < CLOSE:
            assert free is None or common.length > 0
            continue
        met += 1
        alongs = [(x - start[0]) * way[0] + (y - start[1]) * way[1] for x, y in common.exterior.coords]
        assert free == pytest.approx(min(alongs), abs=CLOSE)
    assert met > PLACEMENTS // 40


@pytest.mark.parametrize("part", range(4))
def test_lines_through_a_body(part: int) -> None:
    source, through = Random(200 + part), 0
    for _ in range(PLACEMENTS // 4):
        corners, y = body(source), source.uniform(0, 400)
        shape = Polygon(corners)
        cut = shape.intersection(LineString([(-999, y), (1999, y)]))
        found = chord(corners, y)
        assert (found is None) == (cut.length < CLOSE)
        if found is not None:
            assert found == pytest.approx((cut.bounds[0], cut.bounds[2]), abs=CLOSE)
        start, end = ((source.uniform(0, 500), source.uniform(0, 500)) for _ in range(2))
        inside = shape.intersection(LineString([start, end])).length > CLOSE
        through += inside
        assert crossed(corners, start, end) == inside
    assert 0 < through < PLACEMENTS // 4


def _at(start: Spot, way: Spot, along: float, across: float) -> Spot:
    return start[0] + way[0] * along - way[1] * across, start[1] + way[1] * along + way[0] * across


def test_by_hand() -> None:
    square, beside = ((0, 0), (10, 0), (10, 10), (0, 10)), ((13, 14), (20, 14), (20, 20), (13, 20))
    assert gap(square, beside) == 5  # 3 aside, 4 back
    assert reach(square, ((8, 3), (30, 3), (30, 5), (8, 5))) == 2
    assert reach(square, ((10, 0), (20, 0), (20, 10), (10, 10))) == 0  # they touch
    assert chord(square, 0) is None  # along an edge
    assert not crossed(square, (0, 0), (10, 0))
    assert before(square, (-5, 5), (1.0, 0.0), 2) == 5
    assert before(square, (-5, 12), (1.0, 0.0), 2) is None  # it passes along the edge
