"""The lane that a lead takes below the deck, in tenths of a millimetre: the cheaper, of two alike the one in front, none along y."""

from __future__ import annotations

import pytest

from rigc.analysis.leads.lengths.below_deck import nearest_lane


@pytest.mark.parametrize(
    ("start", "end", "lanes", "lane"),
    [
        ((0, 1000), (500, 1200), (900, 2000), 900),  # 100 + 300 = 400 against 1000 + 800 = 1800
        ((0, 1000), (500, 1200), (900, 1300), 900),  # 100 + 300 and 300 + 100: equally near, the front one
        ((0, 1000), (500, 1200), (1300, 900), 900),  # in whichever order they are stated
        ((0, 1000), (0, 1200), (900,), None),  # the lead only goes along y
        ((0, 1000), (1, 1200), (900,), 900),  # a hair across, and it takes the lane
        ((0, 1000), (500, 1200), (), None),
    ],
)
def test_nearest_lane(start: tuple[int, int], end: tuple[int, int], lanes: tuple[int, ...], lane: int | None) -> None:
    assert nearest_lane(start, end, lanes) == lane
