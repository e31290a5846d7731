"""What a reel gives: of its 100 m two spare ends and the waste are set aside before leads are cut from it."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from rigc.analysis.stores.reel_uses import _use
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.source import Source, Span
from rigc.traced.figure import known_figure
from rigc.traced.term import number
from rigc.traced.units import TENTHS

SPAN = Span(Source("x.rig", "x"), 0, 1)
RIG: Any = SimpleNamespace(
    stock=SimpleNamespace(plugs={"straight": SimpleNamespace(cut_in_mm=Fact(100.0, "100 mm", SPAN))})
)
LEAD: Any = SimpleNamespace(mark="A1", start=Port("a", "out"), end=Port("b", "in"), ends=("straight",) * 2, span=SPAN)


@pytest.mark.parametrize(("tenths", "reels"), [(475_238, 1), (475_239, 2), (475_500, 2)])
def test_two_spare_ends_are_set_aside(tenths: int, reels: int) -> None:
    """Plugs take in 100 mm: 1,000,000 − 2 × 1,000 = 998,000 tenths; with 5 % of waste 998,000 × 100 / 105 = 950,476 are cut into leads:
    two of 475,238. With one spare end set aside it would be 951,428, and two of 475,500 would come from one reel."""
    cut = known_figure("A1.cut", number(tenths), TENTHS, rule="", source="")
    found = _use(RIG, "audio-cable", [(LEAD, cut), (LEAD, cut)])
    assert (found.spare_ends.text, found.holds.text) == ("200", "95.0476")
    assert found.reels == reels
