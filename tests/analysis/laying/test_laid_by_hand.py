"""Boards that were laid by hand: the hand's layout breaks no rule, and what rigc chooses breaks none either and costs no more, by the very sum
that the search makes least."""

from __future__ import annotations

import pytest
from cases import ROOT, results

from laying.deck_rules import of_places, told
from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.analysis.laying.objective import Objective, objective
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.model.rig import Rig

BOARDS = sorted(path.stem for path in (ROOT / "tests" / "laid_by_hand").glob("*.rig") if path.stem != "units")
AT_ONCE = ("hand-luggage", "one-row")
"""These take a second or so; the others some four."""


def test_there_are_boards_of_all_sizes() -> None:
    counts = sorted(len(_by_hand(board).places) for board in BOARDS)
    assert len(counts) == 14
    assert (counts[0], counts[-1]) == (4, 23)


@pytest.mark.parametrize("board", BOARDS)
def test_no_rule_is_broken_by_hand(board: str) -> None:
    assert [finding.message for finding in told(_by_hand(board))] == []


@pytest.mark.parametrize(
    "board", [pytest.param(board, marks=() if board in AT_ONCE else pytest.mark.long) for board in BOARDS]
)
def test_chosen_places_cost_no_more(board: str) -> None:
    hand = _by_hand(board)
    laid, findings = with_chosen_places(hand.replace(places={}))
    assert not findings
    assert not of_places(laid, hand)
    assert _cost(laid).cost <= _cost(hand).cost
    for term in ("audio leads", "beside treadle"):
        assert _counted(laid, term) <= _counted(hand, term)


def _by_hand(board: str) -> Rig:
    return results(ROOT / "tests" / "laid_by_hand" / f"{board}.rig").rig


def _counted(rig: Rig, name: str) -> int:
    return sum(term.counted for term in _cost(rig).terms if term.name == name)


def _cost(rig: Rig) -> Objective:
    """With all places as if they were chosen, so that the same counts."""
    chosen = rig.replace(places={name: place.replace(chosen=True) for name, place in rig.places.items()})
    found = objective(chosen, Results(chosen).get(Leads))
    assert found is not None
    return found
