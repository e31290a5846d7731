"""Areas that leads enclose, and how far leads run beside them: worked by hand, along both axes and in all directions."""

from __future__ import annotations

from itertools import product

import pytest

from rigc.analysis.ground.ring_ways import Beside, Spot, Ways, area_mm2, beside

Stretch = tuple[Spot, Spot]


def turned(stretch: Stretch) -> Stretch:
    """The same along the other axis."""
    (x1, y1), (x2, y2) = stretch
    return (y1, x1), (y2, x2)


@pytest.mark.parametrize(
    ("there", "long_mm", "near_mm"),
    [
        # beside a stretch from 10 to 510 mm at 7 mm
        (((110, 20), (410, 20)), 300, 13),  # within it: 410 - 110, 20 - 7
        (((0, 20), (410, 20)), 400, 13),  # from 10 on
        (((110, 2), (700, 2)), 400, 5),  # to 510, on the other side: 7 - 2
        (((0, 7), (700, 7)), 500, 0),  # all of it
        (((110, 32), (410, 32)), 300, 25),  # just near enough
        (((110, 32.1), (410, 32.1)), None, None),
        (((510, 20), (900, 20)), None, None),  # they only touch
        (((110, 20), (110, 420)), None, None),  # across
        (((110, 20), (410, 21)), None, None),  # askew
    ],
)
def test_how_far_stretches_run_beside_each_other(there: Stretch, long_mm: float | None, near_mm: float | None) -> None:
    here: Stretch = ((10, 7), (510, 7))
    expected = None if long_mm is None or near_mm is None else Beside("D1", long_mm, near_mm)
    for own, other in product((here, here[::-1]), (there, there[::-1])):
        assert beside({"A1": own}, {"D1": other}) == expected
        assert beside({"A1": turned(own)}, {"D1": turned(other)}) == expected


def test_runs_of_one_lead_add_up_and_those_beside_several_do_not() -> None:
    """D1 runs 150 mm at 5 mm, leaves, and runs 160 mm at 9 mm beside A1; beside A2, which lies on the other side, 150 mm and 160 mm too."""
    way: tuple[Spot, ...] = ((0, 5), (150, 5), (150, 100), (200, 100), (200, 9), (360, 9))
    ring: Ways = {"A1": ((0, 0), (400, 0)), "A2": ((0, 14), (400, 14))}
    assert beside({"A1": ring["A1"]}, {"D1": way}) == Beside("D1", 150 + 160, 5)
    assert beside(ring, {"D1": way}) == Beside("D1", 310, 5)


def test_the_longest_is_told_and_of_equals_the_nearest() -> None:
    ring: Ways = {"A1": ((0, 0), (400, 0))}
    others: Ways = {"D1": ((0, 20), (300, 20)), "D2": ((0, 10), (310, 10)), "D3": ((0, -5), (310, -5))}
    assert beside(ring, others) == Beside("D3", 310, 5)
    assert beside(ring, {}) is None


@pytest.mark.parametrize(
    ("points", "area"),
    [
        (((10, 20), (40, 20), (40, 60), (10, 60)), 30 * 40),
        (((10, 60), (40, 60), (40, 20), (10, 20)), 30 * 40),  # the other way round
        (((0, 0), (30, 0), (0, 40)), 600),
        (((0, 0), (20, 20), (20, 0), (0, 20)), 0),  # two triangles, met the other way round
        (((0, 0), (20, 0)), 0),
    ],
)
def test_the_area_inside(points: tuple[Spot, ...], area: float) -> None:
    assert area_mm2(points) == area
