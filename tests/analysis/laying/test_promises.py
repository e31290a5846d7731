"""What is promised of chosen places, held on dealt boards: what is stated stays, the order in which places are written is no matter, more
steps are never worse, and a mirror changes nothing."""

from __future__ import annotations

import random

import pytest
from dealt_decks import dealt as dealt_rig

from laying.mirrored import mirrored, mirrored_layout
from laying.small_boards import crowded
from rigc.analysis.laying import chosen_places
from rigc.analysis.laying.choices.task import Task, task_of
from rigc.analysis.laying.chosen_places import chosen_layout, with_chosen_places
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.layout import Layout
from rigc.model.rig import Rig

FEW = 300  # steps


def _half_stated(seed: int) -> Rig:
    """A dealt rig without the places of every other thing."""
    rig = dealt_rig(seed).rig
    half: Rig = rig.replace(places=dict(list(rig.places.items())[::2]))
    return half


@pytest.mark.parametrize("seed", [1, 4])
def test_what_is_stated_stays_where_it_stands(seed: int) -> None:
    rig = _half_stated(seed)
    laid, _ = with_chosen_places(rig, FEW)
    assert {name: laid.places[name] for name in rig.places} == rig.places
    assert len(laid.places) > len(rig.places)


@pytest.mark.parametrize("seed", [1])
def test_the_order_in_which_places_are_written_is_no_matter(seed: int) -> None:
    rig = _half_stated(seed)
    turned = rig.replace(places=dict(reversed(list(rig.places.items()))))
    assert with_chosen_places(rig, FEW)[0].places == with_chosen_places(turned, FEW)[0].places


@pytest.mark.parametrize("seed", [1, pytest.param(13, marks=pytest.mark.long)])
def test_more_steps_than_usual_are_never_worse(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """With other plugs and sides, too; few steps are made the usual ones, so that many times as many take no long time."""
    monkeypatch.setattr(chosen_places, "EFFORT", 200)
    monkeypatch.setattr(chosen_places, "_EACH_PAIR", 40)
    task = _open(dealt_rig(seed).rig)
    usual = chosen_places.usual_effort(task.board)
    found = [chosen_layout(task, effort).found for effort in (None, usual + 1, 4 * usual, 6 * usual, 16 * usual)]
    ranks = [each.rank for each in found]
    assert ranks == sorted(ranks, reverse=True)


def _open(rig: Rig) -> Task:
    task = task_of(rig.replace(places={}))
    assert task is not None
    return task


@pytest.mark.parametrize("seed", range(24))
def test_the_same_layout_in_a_mirror_costs_the_same(seed: int) -> None:
    """But for sound that goes from left to right, which goes from right to left there. Things in one line are taken as apart, as they are
    where nothing is in the way, so that their gaps are the same from either side."""
    board, dice = _either_way(crowded(seed)), random.Random(seed)
    image = mirrored(board)
    assert mirrored(image) == board
    for _ in range(10):
        at = [
            (
                board.step * dice.randrange(max(1, (board.width - item.shapes[0].width) // board.step)),
                board.step * dice.randrange(max(1, (board.depth - item.shapes[0].depth) // board.step)),
                dice.randrange(len(item.shapes)),
            )
            for item in board.items
        ]
        one, other = (
            Layout(each.replace(gap=0), there) for each, there in ((board, at), (image, mirrored_layout(board, at)))
        )
        assert (one.hard, one.broken, one.missed, one.cost) == (other.hard, other.broken, other.missed, other.cost)
    found = search(board, 200)
    seen = Layout(image, mirrored_layout(board, found.at))
    assert found.hard or (seen.hard + seen.broken, seen.missed, seen.cost) == found.rank


def _either_way(board: Board) -> Board:
    made: Board = board.replace(links=tuple(link.replace(back=0) for link in board.links))
    return made
