"""What the solver proves: held against the tests' own exhaustive search, against the rules of the search, and by hand."""

from __future__ import annotations

import random

import pytest
from small_rigs import block, results_of

from laying.exhaustive import shorter_than
from laying.small_boards import dealt, of_some, unit
from rigc.analysis.deck.unplaced import as_stated
from rigc.analysis.laying.choices.task import task_of
from rigc.analysis.laying.proved_places import proved_places
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.conflicts import in_the_way
from rigc.analysis.laying.search.ground import Ground
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.solver.forbidden import forbidden, parted
from rigc.analysis.laying.search.solver.model import proof
from rigc.analysis.laying.search.solver.parts import parts
from rigc.analysis.laying.search.standing.clash import clash
from rigc.reports.content import Table
from rigc.reports.laying.choice_sheets import proved_sheet


@pytest.mark.parametrize(("seed", "units"), [(0, 3), (1, 4)])
def test_the_best_is_proved(seed: int, units: int) -> None:
    """Both judge the same rules: the solver's bound is met by its own layout, and the exhaustive search finds nothing below."""
    board = dealt(seed, units)
    made = proof(board, 10)
    assert made.at is not None and not made.impossible
    layout = Layout(board, list(made.at))
    assert (layout.faults, layout.cost) == (0, made.bound)
    assert shorter_than(board, made.bound / 100) is None


def test_what_stands_in_the_way_of_a_lead_is_seen() -> None:
    """On this full board a bound that lets leads run through things is 620 mm; the best layout has 650 mm, and is proved to be that."""
    board = dealt(2, 5, turning=False).replace(step=10)
    made = proof(board, 5)
    assert made.at is not None
    layout = Layout(board, list(made.at))
    assert (layout.faults, layout.cost, made.bound) == (0, 650_000, 650_000)


def test_parts_of_a_board() -> None:
    board = dealt(3, 6, turning=False)
    board = board.replace(items=(*board.items[:5], board.items[5].replace(fixed=(0, 0), use=7)))
    first, last = parts(board, 4)
    assert (first.items, first.kept, first.links) == ((0, 1, 2, 3), (0, 1, 2, 3, 5), (0, 1, 2))
    assert (last.items, last.kept, last.links) == ((1, 2, 3, 4), (1, 2, 3, 4, 5), (1, 2, 3, 4))
    assert [(link.start.item, link.end.item) for link in last.board.links] == [(0, 1), (1, 2), (2, 3), (3, 4)]
    assert last.board.items[4].use == 0
    assert not parts(board, 5)


def test_what_the_solver_forbids_the_rules_forbid() -> None:
    board, dice = dealt(5, 6).replace(apart=30, aside=700, behind=400, knob=450), random.Random(1)
    solids = [each for solids in Ground(board).solids for each in solids]
    for _ in range(60):
        one, other = dice.choice(solids), dice.choice(solids)
        for left, front, right, rear in forbidden(board, one, other):
            there = dice.randint(left + 1, right - 1), dice.randint(front + 1, rear - 1)
            assert in_the_way(board, one, (0, 0), other, there) > 0


def test_areas_of_two_that_must_be_apart() -> None:
    board = dealt(0, 3)
    one, other = Ground(board).solids[0][0], Ground(board).solids[1][0]
    assert parted(one, other, 0) == [(-other.width, -other.depth, one.width, one.depth)]
    assert parted(one, other, 50)[0] == (-other.width - 50, -other.depth, one.width + 50, one.depth)


def narrow(width: int) -> Board:
    """Two units of 40 x 60 mm whose plugs face each other in one row, a third that hangs below and is in nobody's way."""
    left = unit("left", 400, 600, (("right", 300),)).replace(
        shapes=unit("left", 400, 600, (("right", 300),)).shapes[:1]
    )
    right = unit("right", 400, 600, (("left", 300),)).replace(
        shapes=unit("right", 400, 600, (("left", 300),)).shapes[:1]
    )
    below = unit("below", 300, 300, (), under=True)
    return Board(width, 600, 120, (300,), (left, below, right), apart=0, air=20, step=10)


def test_a_board_one_millimetre_too_small() -> None:
    # left before right: 40 + 15 + 2 + 15 + 40 = 112 mm, plugs between; right before left: 2 x 40 + 2 x 15 outwards = 110 mm
    assert not search(narrow(1100), 2_000).hard
    board = narrow(1090)
    found = search(board, 2_000)
    assert found.hard
    assert clash(board, found.at) == (0, 2)
    for one in (0, 2):
        rest = tuple(each for each in (0, 1, 2) if each != one)
        assert not search(of_some(board, rest), 500).hard
    assert not clash(narrow(1100), found.at)


def test_what_is_told_of_a_layout() -> None:
    # two units of 40 x 60 mm without leads on a deck of 200 x 100 mm: in front both cost nothing but the one line that they make, where it
    # does not matter how far that is from the middle
    units = "".join(
        block("unit", name, "body 40 x 60 x 40 mm", "input in ts", "output out ts") for name in ("dunlin", "knot")
    )
    deck = block("deck", "pan", "size 200 x 100 mm") + block("place", "", "weigh centring 0 %")
    rig = results_of(units + "chain dunlin -> knot\n" + deck).rig
    task = task_of(as_stated(rig))
    assert task is not None
    made = proved_places(task, 300, 2)
    assert not made.impossible and made.within_percent == 0
    (table,) = (block for block in proved_sheet(made).blocks if isinstance(block, Table))
    assert [row.cells[0].text for row in table.rows] == ["this layout", "every other, at least"]
    assert table.rows[1].cells[2].text == "proved by the solver: none costs less"
