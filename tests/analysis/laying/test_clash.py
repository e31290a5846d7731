"""What is proved to have no room together: held against the solver, which proves the same in its own way."""

from __future__ import annotations

import pytest

from laying.small_boards import dealt, of_some
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Tier
from rigc.analysis.laying.search.solver.model import proof
from rigc.analysis.laying.search.standing.apart import Apart
from rigc.analysis.laying.search.standing.clash import clash
from rigc.analysis.laying.search.standing.room import Room, has_room

TURNS = 5_000


@pytest.mark.parametrize("seed", range(10))
def test_the_solver_proves_the_same(seed: int) -> None:
    """Boards of three units with plugs that become narrower, every other one with a corner that is kept free or a tier."""
    board = dealt(seed, 3, turning=False).replace(step=10)
    if seed % 3 == 1:
        board = board.replace(kept_free=((0, 0, 300, 400),))
    if seed % 3 == 2:
        board = board.replace(tiers=(Tier(board.depth // 2, board.depth, 300),))
    for width in range(board.width, 600, -200):
        narrow = board.replace(width=width)
        mine = Apart(narrow, (0, 1, 2)).impossible(TURNS)
        assert mine == proof(narrow, 5.0, costs=False).impossible
        assert not (mine and has_room(narrow))


@pytest.mark.parametrize("seed", range(2))
def test_without_any_one_of_those_that_clash_the_others_stand(seed: int) -> None:
    board = dealt(seed, 4, turning=False).replace(step=10)
    widths = range(board.width, 500, -100)
    found = ((narrow, search(narrow, 300)) for narrow in (board.replace(width=width) for width in widths))
    narrow, least = next((narrow, made) for narrow, made in found if clash(narrow, made.at))
    together = clash(narrow, least.at)
    assert proof(of_some(narrow, together), 5.0, costs=False).impossible
    for item in together:
        rest = tuple(each for each in together if each != item)
        assert not rest or has_room(of_some(narrow, rest))


def test_as_many_as_can_stand_do() -> None:
    """Boxes of 50 x 60 mm at least with plugs on a deck for one of them: all but one are outside."""
    board = dealt(0, 3, turning=False).replace(step=10, links=())
    one = board.items[0].shapes[0]
    room = Room(board.replace(width=one.width + 300, depth=one.depth + 300))
    for _ in room.fill_all():
        pass
    assert len(room.outside) == 2
