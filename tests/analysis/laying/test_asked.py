"""The places that wishes ask for, as bits of a board's grid."""

from __future__ import annotations

from laying.small_boards import dealt
from rigc.analysis.laying.search.asked import Asked
from rigc.analysis.laying.search.board import Board, Item, Shape, Wish
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import Ground


def board(*wishes: Wish) -> Board:
    """Two things of 10 x 10 mm on 60 x 30 mm."""
    thing = Shape(0, 100, 100)
    items = Item("marl", (thing,), 500), Item("hedge", (thing,), 500)
    return dealt(0, 3).replace(items=items, links=(), width=600, depth=300, wishes=wishes, step=100)  # type: ignore[no-any-return]


def asked(of: Board) -> Asked:
    return Asked(FreeRoom(Ground(of)))


def test_what_misses_its_row_is_awry() -> None:
    # the front third of 30 mm ends at 10 mm
    both = asked(board(Wish("row", (0,), "front"), Wish("row", (1,), "rear")))
    assert both.awry([(0, 100, 0), (300, 200, 0)]) == []
    assert both.awry([(0, 200, 0), (300, 0, 0)]) == [0, 1]


def test_only_places_that_are_asked_for_are_left() -> None:
    of = asked(board(Wish("row", (0,), "front")))
    way = (((0, 0, 0, 0),),)
    every = of.room.alone(0, 0)
    front, rear = (of.room.crossing([0], [y]) for y in (0, 200))
    (left,) = of.of_ways(way, [every])
    assert left & front and not left & rear and not left & ~every
    assert of.of_ways(way, [rear]) == [rear]  # no other is free
