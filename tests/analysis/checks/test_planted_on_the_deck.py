"""The worked rigs' planted mistakes on deck and strips: each told once, with its figures; the corrected rigs without them."""

from __future__ import annotations

import pytest
from written import compiled_with

from rigc.diagnostics.diagnostic import Diagnostic

MINE = ("bodies-overlap", "plugs-collide", "plug-over-edge", "too-tall", "weak-strip", "too-heavy")
HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def found(path: str) -> dict[str, Diagnostic]:
    """The findings of these rules by their number, each of which is told at most once."""
    mine = [finding for finding in compiled_with(path).findings if finding.kind.name in MINE]
    assert len({finding.kind.name for finding in mine}) == len(mine), [finding.message for finding in mine]
    return {finding.kind.name: finding for finding in mine}


@pytest.mark.parametrize(("path", "left"), [(HOME, []), (TOURING, ["too-heavy"])])
def test_the_corrected_rigs(path: str, left: list[str]) -> None:
    assert list(found(path)) == left


def test_the_home_board_as_ordered() -> None:
    told = found("tests/rigs/back-bedroom-as-ordered.rig")
    assert sorted(told) == ["plug-over-edge", "plugs-collide", "weak-strip"]
    # rear jacks at 52, 35, 18: 17 apart; (27 + 11)/2 = 19; with the barrel kind (16 + 11)/2 = 13.5
    assert told["plugs-collide"].subject == ("lant", "lant.out", "lant.dc", "lant.in")
    assert [number.value for number in told["plugs-collide"].numbers] == [17, 19, 2]
    assert "use 'barrel-angle' at 'out' and 'in': it needs (16 + 11)/2 = 13.5 mm" in told["plugs-collide"].advice
    # rotunda.out at x = 40; straight plug 60 + 20; the barrel kind 19 + 2
    assert told["plug-over-edge"].subject == ("rotunda", "rotunda.out")
    assert [number.value for number in told["plug-over-edge"].numbers] == [80, 40, 40]
    assert told["plug-over-edge"].advice == "use 'barrel-angle' at 'rotunda.out': it needs 19 mm"
    # 7.25 cm² against 0.19 · 196.2 / 30 kPa; mushroom-head 0.19 · 196.2 / 120 kPa = 3.11 cm²
    assert told["weak-strip"].subject == ("plumb",)
    assert [number.value for number in told["weak-strip"].numbers] == [7.25, 12.43]
    assert "use 'mushroom' under 'plumb', which needs 3.11 cm²" in told["weak-strip"].advice
    assert "bridge plate" in told["weak-strip"].advice


def test_the_touring_board_as_ordered() -> None:
    told = found("tests/rigs/long-haul-as-ordered.rig")
    assert sorted(told) == ["plugs-collide", "too-heavy"]
    # sends at 50 + 36 k, returns 18 further: pitch 18 against (27 + 27)/2 = 27; 8 sends and 8 returns
    assert told["plugs-collide"].subject[0] == "signalbox"
    assert len(told["plugs-collide"].subject) == 1 + 16
    assert [number.value for number in told["plugs-collide"].numbers] == [18, 27, 9]
    assert told["plugs-collide"].advice.endswith("it needs (16 + 16)/2 = 16 mm, 2 mm stay free")


def test_the_touring_board_is_too_heavy() -> None:
    told = found(TOURING)["too-heavy"]
    # 33.32 kg in its case against 23 kg for one lifter and 32 kg for an airline piece
    assert [number.value for number in told.numbers] == [33.32, 23, 32]
    assert "10.320 kg must travel apart" in told.advice
