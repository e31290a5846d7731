"""What a reel gives: of its 100 m two spare ends and the waste are set aside before leads are cut from it."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from rigc.analysis.cables.reel_use import _use
from rigc.analysis.computations.leads import Lead


@pytest.mark.parametrize(("tenths", "reels"), [(475_238, 1), (475_239, 2), (475_500, 2)])
def test_two_spare_ends_are_set_aside(tenths: int, reels: int) -> None:
    """Plugs take in 100 mm: 1,000,000 − 2 × 1,000 = 998,000 tenths; with 5 % of waste 998,000 × 100 / 105 = 950,476 are cut into leads:
    two of 475,238. With one spare end set aside it would be 951,428, and two of 475,500 would come from one reel."""
    rig: Any = SimpleNamespace(
        stock=SimpleNamespace(plugs={"straight": SimpleNamespace(cut_in_mm=SimpleNamespace(value=100.0))})
    )
    lead: Any = SimpleNamespace(ends=("straight", "straight"))
    batch: list[tuple[Lead, int]] = [(lead, tenths), (lead, tenths)]
    found = _use(rig, "audio-cable", batch)
    assert (found.end, found.spare_ends) == (1000, 2000)
    assert len(found.plan.raws) == reels
