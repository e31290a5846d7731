"""Power statements that can't be right: each is told in one clear sentence, and nothing breaks. The rig is invented."""

from __future__ import annotations

import pytest
from cases import READER

from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.source import Source

RIG = """language 1
rig sample {
  revision A 2026-03-02
}
supply mill {
  ceiling 9 W
  connector barrel 5.5 x 2.1 mm
  polarity centre-negative
  outlet o1..o3 9 V dc 100 mA isolated
}
unit lant {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  accepts 8.7..9.9 V
  polarity centre-negative
  draws 60 mA
  ground negative
  analogue
}
unit marl like lant {
}
place {
  lant at 0, 0 mm
  marl at 100, 0 mm
}
power {
  lant from mill.o1
  others from mill
}
"""
FEED = "lant from mill.o1"
OTHERS = "others from mill"


def found(*changes: tuple[str, str]) -> tuple[Diagnostic, ...]:
    text = RIG
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return compile_rig(lambda name: Source(name, text), "sample.rig", READER).findings


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (("9 V dc 100 mA", "9 V dc 0 mA"), "0 mA is too little for an outlet: at least 1 mA is plausible"),
        (("8.7..9.9 V", "9.9..8.7 V"), "9.9..8.7 V runs from the higher to the lower"),
        (
            (FEED, "lant from mill.o1\n  marl from mill.o1"),
            "mill.o1 feeds 'lant' and 'marl', and it is not said that they share it",
        ),
        ((FEED, "lant, lant from mill.o1 shared"), "'lant' stands twice in this list"),
        ((OTHERS, "others from mill\n  lant, lant may share"), "'lant' stands twice in this list"),
        (
            (FEED, "lant from mill.o1, mill.o2, mill.o3 series"),
            "a series lead joins two different outlets; named here: mill.o1, mill.o2, mill.o3",
        ),
        (
            (FEED, "lant from mill.o1, mill.o1 parallel"),
            "a parallel lead joins two different outlets; named here: mill.o1, mill.o1",
        ),
        (
            (FEED, "lant, marl from mill.o1 shared\n  lant alone"),
            "'lant' shall stay alone and shares mill.o1 with 'marl'",
        ),
        (("  outlet o1..o3 9 V dc 100 mA isolated\n", ""), "'mill' has no outlet 'o1'"),
    ],
)
def test_told(change: tuple[str, str], message: str) -> None:
    assert [each.message for each in found(change) if each.message == message and each.level is Level.ERROR]


def test_a_supply_with_no_outlet_to_choose_from() -> None:
    told = found(("  outlet o1..o3 9 V dc 100 mA isolated\n", ""), (f"  {FEED}\n", ""))
    assert "'mill' shall feed 'lant' and 'marl' and declares no outlet" in [each.message for each in told]


def test_a_ceiling_below_the_sum_of_what_is_stated() -> None:
    """2 x 60 mA x 9 V = 1.08 W of 0.9 W."""
    told = found((FEED, "lant from mill.o1\n  marl from mill.o2"), ("ceiling 9 W", "ceiling 0.9 W"))
    (over,) = [each for each in told if each.kind.name == "overloaded-supply"]
    assert over.message == "'mill' gives 0.9 W in all and its units take 1.08 W (120 %)"
    assert not [each for each in told if each.kind.name == "unpowered-unit"]


def test_a_ceiling_that_what_is_stated_has_used_up() -> None:
    """0.54 W of 0.5 W: nothing is left for marl; a pair in parallel would not mend that and is not proposed."""
    told = found(("ceiling 9 W", "ceiling 0.5 W"))
    (left,) = [each for each in told if each.kind.name == "unpowered-unit"]
    assert left.message == "'marl' can't be fed from 'mill': that is more than its ceiling allows"
    assert (
        left.advice == "add a supply with an outlet of 100 mA at 9 V DC (centre-negative, barrel 5.5 × 2.1) for 'marl'"
    )


def test_more_outlets_kept_free_than_there_are() -> None:
    (left,) = [each for each in found((OTHERS, "others from mill\n  spare 9")) if each.kind.name == "unpowered-unit"]
    assert left.advice == "keep 1 outlet free"
