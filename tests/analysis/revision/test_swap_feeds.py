"""The ways to feed a unit whose outlet is too weak. Boards are invented; shares are worked by hand."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of, unit

from rigc.analysis.revision.substitute.feeds import FeedWay, feed_ways
from rigc.analysis.revision.substitute.trial import _feed

INLET = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "polarity centre-negative", "ground negative")


def ways(*outlets: str, more: str = "", others: tuple[tuple[str, int, str], ...] = (), draws: int = 300) -> list[str]:
    """`it` draws 300 mA on o1; the others are a name, a current and an outlet each."""
    text = block("supply", "brick", "connector barrel 5.5 x 2.1 mm", "polarity centre-negative", *outlets) + more
    text += block("unit", "it", "input in ts", "output out ts", *INLET, f"draws {draws} mA")
    for name, drawn, _ in others:
        text += block("unit", name, "input in ts", "output out ts", *INLET, f"draws {drawn} mA")
    text += block("power", "", "it from brick.o1", *(f"{name} from {outlet}" for name, _, outlet in others))
    return [said(way) for way in feed_ways(results_of(text), "it")]


def said(way: FeedWay) -> str:
    shares = zip(way.taps, way.shares, strict=True)
    return ", ".join(f"{name} {each} {share:.1f}" for (name, each), share in shares if share is not None)


def test_a_free_outlet() -> None:
    """300 of 500 mA are 60 %; o3 gives too little, and o4 another voltage."""
    outlets = ("outlet o1 9 V dc 100 mA isolated", "outlet o2 9 V dc 500 mA isolated", "outlet o3 9 V dc 150 mA isolated",
               "outlet o4 12 V dc 500 mA isolated")  # fmt: skip
    assert ways(*outlets) == ["it brick.o2 60.0"]


def test_the_outlet_of_another_that_moves() -> None:
    """60 mA go onto o1 (60 of 100 mA), so that o2 is free: 300 of 500 mA."""
    outlets = ("outlet o1 9 V dc 100 mA isolated", "outlet o2 9 V dc 500 mA isolated")
    assert ways(*outlets, others=(("small", 60, "brick.o2"),)) == ["it brick.o2 60.0, small brick.o1 60.0"]


def test_a_second_outlet_in_parallel() -> None:
    """(200 + 200) x 0.9 = 360 mA: 300 are 83.3 %, a warning, but there is nothing else. Not with one common, nor of another supply."""
    isolated = ("outlet o1..o2 9 V dc 200 mA isolated",)
    assert ways(*isolated) == ["it brick.o1 and brick.o2 in parallel 83.3"]
    assert ways("outlet o1..o2 9 V dc 200 mA common one") == []
    other = block("supply", "block", "connector barrel 5.5 x 2.1 mm", "polarity centre-negative",
                  "outlet p1 9 V dc 200 mA isolated")  # fmt: skip
    assert ways("outlet o1 9 V dc 200 mA isolated", more=other) == []


def test_no_warning_goes_before_fewer_moves() -> None:
    """o2 alone would be full (300 of 300 mA); with `small` (100 mA) moved to o2, o3 gives 500: 60 %, and 33.3 %."""
    outlets = (
        "outlet o1 9 V dc 100 mA isolated",
        "outlet o2 9 V dc 300 mA isolated",
        "outlet o3 9 V dc 500 mA isolated",
    )
    found = ways(*outlets, others=(("small", 100, "brick.o3"),))
    assert found[0] == "it brick.o3 60.0, small brick.o2 33.3"
    assert "it brick.o2 100.0" in found


def test_a_supply_that_is_full_is_no_way() -> None:
    """9 V x 300 mA = 2.7 W, more than the 2 W that all outlets give together."""
    assert ways("outlet o1 9 V dc 100 mA isolated", "outlet o2 9 V dc 500 mA isolated", "ceiling 2 W") == []


@pytest.mark.parametrize(("draws", "full"), [("100 mA", False), ("100.5 mA", True)])
def test_an_outlet_that_gives_just_enough(draws: str, full: bool) -> None:
    """100 mA of 100 are not too much; what takes no power lacks none, and what stands on no outlet lacks one."""
    fed = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", f"draws {draws}")
    mill = block("supply", "mill", "connector barrel 5.5 x 2.1 mm", "outlet o1 9 V dc 100 mA isolated")
    units = unit("marl", *fed) + unit("lant", *fed) + unit("reed", "passive")
    made = results_of(units + mill + block("power", "", "marl from mill.o1"))
    assert _feed(made, "marl") == (full, True)
    assert (_feed(made, "lant"), _feed(made, "reed")) == ((True, True), (False, True))
