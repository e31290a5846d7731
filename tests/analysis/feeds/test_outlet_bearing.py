"""What a unit is reckoned to take of its outlet at most."""

from __future__ import annotations

import pytest
from power_rigs import fact, unit

from rigc.analysis.feeds.outlet_bearing import highest_ma


@pytest.mark.parametrize(
    ("draws", "starts", "most"), [(100, None, 100), (100, 230, 230), (100, 40, 100), (None, 40, 40)]
)
def test_the_highest_current_that_is_known(draws: float | None, starts: float | None, most: float) -> None:
    """A current at switch-on that is smaller than that in use takes nothing off."""
    lant = unit("lant", 1).replace(
        draws_ma=None if draws is None else fact(draws), starts_ma=None if starts is None else fact(starts)
    )
    assert highest_ma(lant) == most
