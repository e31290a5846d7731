"""The worked rigs' planted mistakes on deck and strips: each told once, with its figures; the corrected rigs without them."""

from __future__ import annotations

import pytest
from written import compiled_with

from rigc.diagnostics.diagnostic import Diagnostic

MINE = ("D01", "D02", "D03", "D05", "D08", "D09")
HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def found(path: str) -> dict[str, Diagnostic]:
    """The findings of these rules by their number, each of which is told at most once."""
    mine = [finding for finding in compiled_with(path).findings if finding.kind.code in MINE]
    assert len({finding.kind.code for finding in mine}) == len(mine), [finding.message for finding in mine]
    return {finding.kind.code: finding for finding in mine}


@pytest.mark.parametrize(("path", "left"), [(HOME, []), (TOURING, ["D09"])])
def test_the_corrected_rigs(path: str, left: list[str]) -> None:
    assert list(found(path)) == left


def test_the_home_board_as_ordered() -> None:
    told = found("tests/rigs/back-bedroom-as-ordered.rig")
    assert sorted(told) == ["D02", "D03", "D08"]
    # rear jacks at 52, 35, 18: 17 apart; (27 + 11)/2 = 19; with the barrel kind (16 + 11)/2 = 13.5
    assert told["D02"].subject == ("lant", "lant.out", "lant.dc", "lant.in")
    assert [number.value for number in told["D02"].numbers] == [17, 19, 2]
    assert "use 'barrel-angle' at 'out' and 'in': it needs (16 + 11)/2 = 13.5 mm" in told["D02"].help
    # rotunda.out at x = 40; straight plug 60 + 20; the barrel kind 19 + 2
    assert told["D03"].subject == ("rotunda", "rotunda.out")
    assert [number.value for number in told["D03"].numbers] == [80, 40, 40]
    assert told["D03"].help == "use 'barrel-angle': it needs 19 + 2 = 21 mm"
    # 7.25 cm² against 0.19 · 196.2 / 30 kPa; mushroom-head 0.19 · 196.2 / 120 kPa = 3.11 cm²
    assert told["D08"].subject == ("plumb",)
    assert [number.value for number in told["D08"].numbers] == [7.25, 12.43]
    assert "'mushroom', which needs 3.11 cm²" in told["D08"].help
    assert "bridge plate" in told["D08"].help


def test_the_touring_board_as_ordered() -> None:
    told = found("tests/rigs/long-haul-as-ordered.rig")
    assert sorted(told) == ["D02", "D09"]
    # sends at 50 + 36 k, returns 18 further: pitch 18 against (27 + 27)/2 = 27; 8 sends and 8 returns
    assert told["D02"].subject[0] == "signalbox"
    assert len(told["D02"].subject) == 1 + 16
    assert [number.value for number in told["D02"].numbers] == [18, 27, 9]
    assert told["D02"].help.endswith("it needs (16 + 16)/2 = 16 mm, 2 mm stay free")


def test_the_touring_board_is_too_heavy() -> None:
    told = found(TOURING)["D09"]
    # 33.258 kg in its case against 23 kg for one lifter and 32 kg for an airline piece
    assert [number.value for number in told.numbers] == [33.258, 23, 32]
    assert "10.258 kg must travel apart" in told.help
