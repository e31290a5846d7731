"""A supply below the deck goes where its leads are best: no place that trying all of them finds is better."""

from __future__ import annotations

from itertools import product

from laying.small_boards import unit
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board, End, Item, Link
from rigc.analysis.laying.search.layout import Layout


def board(spots: tuple[tuple[int, int], ...]) -> Board:
    """Units of 60 x 80 mm at these corners, each fed at its rear from its own outlet of a supply of 70 x 40 mm that hangs; a lead with
    sound goes from each to the next, below the deck, and shall be crossed as seldom as can be."""
    mill = unit("mill", 700, 400, (("front", 150), ("front", 350), ("front", 550)), height=300, under=True, beneath=600)
    units: tuple[Item, ...] = tuple(
        unit(f"u{number}", 600, 800, (("rear", 300), ("left", 400), ("right", 400)), fixed=spot)
        for number, spot in enumerate(spots)
    )
    fixed = tuple(each.replace(shapes=each.shapes[:1]) for each in units)
    power = (
        Link(f"D{number}", "dc", End(0, number), End(number + 1, 0), 30, onward=False) for number in range(len(spots))
    )
    sound = (
        Link(f"A{number}", "audio", End(number, 2), End(number + 1, 1), onward=False, run="under")
        for number in range(1, len(spots))
    )
    return Board(
        2600, 1800, 120, (200, 1000, 1500), (mill, *fixed), (*power, *sound), crossing=20_000, air=20, step=100
    )


def test_no_place_of_all_is_better() -> None:
    spots = (200, 100), (1500, 400)
    made = board(spots)
    found = search(made, 8_000)
    fixed = [(*spot, 0) for spot in spots]
    costs = []
    for x, y, turn in product(range(0, made.width, 200), range(0, made.depth, 200), range(4)):
        layout = Layout(made, [(x, y, turn), *fixed])
        if not layout.hard and not layout.broken:
            costs.append(layout.cost)
    assert len(costs) > 100
    assert not found.hard and found.cost <= min(costs)
