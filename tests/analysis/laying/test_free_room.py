"""The free places of a thing: those that the rules let pass, and no others; and a full board is filled."""

from __future__ import annotations

from laying.small_boards import dealt
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Glue
from rigc.analysis.laying.search.ground import Ground
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.refill import Refill
from rigc.analysis.laying.search.rows.first_layout import first_layout


def test_what_is_free_is_in_nobodys_way() -> None:
    """Every place of a grid of 20 mm, with two things standing, one of them off the grid, and a part of the deck kept free."""
    board = dealt(3, 5).replace(step=200, kept_free=((0, 0, 300, 400),), aside=700, behind=400)
    ground, at = Ground(board), [(530, 410, 0), (1400, 600, 1), (0, 0, 0), (0, 0, 0), (0, 0, 0)]
    room = FreeRoom(ground)
    for shape in range(4):
        solid = ground.solids[3][shape]
        free = room.of(3, shape, at, (0, 1))
        every = [(x, y) for y in range(0, board.depth + 1, 200) for x in range(0, board.width + 1, 200)]
        known = set(room.places(free, range(0, board.width + 1, 200), range(0, board.depth + 1, 200)))
        allowed = {
            (x, y)
            for x, y in every
            if x + solid.width <= board.width
            and not ground.alone(3, (x, y, shape))
            and not any(ground.between(3, (x, y, shape), other, at[other]) for other in (0, 1))
        }
        assert known == allowed


def test_places_that_touch() -> None:
    # one unit of 40 x 60 mm or so alone: the four corners of where it may stand, and nothing between
    board = dealt(0, 3)
    ground = Ground(board)
    room = FreeRoom(ground)
    left, front, right, rear = ground.solids[0][0].reach
    ends = {(x, y) for x in (-left, board.width - right) for y in (-front, board.depth - rear)}
    rounded = {(-(-x // 100) * 100 if x == -left else x // 100 * 100, y) for x, y in ends}
    rounded = {(x, -(-y // 100) * 100 if y == -front else y // 100 * 100) for x, y in rounded}
    assert set(room.places(room.of(0, 0, [(0, 0, 0)] * 3, ()), (), ())) == rounded


def test_a_full_board_is_filled() -> None:
    """The rounds alone find no layout in three times as many steps."""
    board = dealt(1, 4)
    layout = Layout(board, first_layout(board))
    refill = Refill(layout, (0, 1, 2, 3), Glue(FreeRoom(layout.ground)), Dice(0))
    for _ in refill.run(12_000, 100_000, 1_500):
        if refill.found is not None:
            break
    assert refill.found is not None
    made = Layout(board, list(refill.found.at))
    assert (made.hard, made.broken, made.cost) == (0, 0, refill.found.cost)
