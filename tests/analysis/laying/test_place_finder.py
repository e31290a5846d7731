"""The search for a place of what is in the way: bounded by count, and what it tells when it finds none."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of

from rigc.analysis.deck.body_clash import BodyClash
from rigc.analysis.deck.checks.bodies_overlap import bodies_overlap
from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.place_finder import PlaceFinder, _moves
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic

BOARD = (
    block("deck", "board", "size 400 x 200 mm")
    + block("unit", "marl", "body 70 x 120 x 55 mm")
    + block("unit", "hedge", "body 75 x 115 x 48 mm")
)


def overlaps(made: Results, finder: PlaceFinder) -> list[Diagnostic]:
    return list(bodies_overlap(made.rig, made.get(Placement), made.get(BodyClash), finder))


def test_the_thing_that_has_less_far_to_go_is_moved() -> None:
    # hedge at 60: 10 mm into marl's right side, which it leaves by 10 mm to the right; marl can't go left of the deck
    made = results_of(BOARD + "place {\n  marl at 0, 0 mm\n  hedge at 60, 0 mm\n}\n")
    (found,) = overlaps(made, PlaceFinder(made))
    assert found.advice == "move 'hedge' 10 mm to the right"


def test_a_place_in_inches_is_left_by_whole_millimetres() -> None:
    # hedge at 2.4 in = 60.96 mm: 9.04 mm into marl's right side, which ends at 70 mm; 10 mm to the right it stands at 70.96 mm
    made = results_of(BOARD + "place {\n  marl at 0, 0 mm\n  hedge at 2.4, 0.3 in\n}\n")
    (found,) = overlaps(made, PlaceFinder(made))
    assert found.advice == "move 'hedge' 10 mm to the right"
    assert [str(edit) for mend in found.mends for edit in mend.edits if "70.96, 7.62 mm" in str(edit)]


def test_when_all_trials_of_a_run_are_used_up_that_is_told() -> None:
    made = results_of(BOARD + "place {\n  marl at 0, 0 mm\n  hedge at 60, 0 mm\n}\n")
    finder = PlaceFinder(made)
    finder.left = 0
    (found,) = overlaps(made, finder)
    assert not found.mends
    assert (
        found.help
        == "mend what else is told of the deck, then check again: the 60 places that one run tries are used up"
    )


def test_a_touring_board_takes_few_trials_by_the_rules() -> None:
    """Two units in each other's way: the dear part of the search is counted, not timed."""
    made = results(ROOT / "examples" / "long-haul" / "board.rig")
    places = made.rig.places
    for name, x in (("lapwing", 60.0), ("heron", 640.0), ("slipway", 600.0)):
        moved = Results(made.rig.replace(places={**places, name: places[name].replace(x_mm=x)}))
        finder = PlaceFinder(moved)
        before = finder.left
        found = overlaps(moved, finder)
        assert found and all(each.mends for each in found)
        assert before - finder.left <= 12


def test_the_grid_of_moves_is_bounded_whatever_the_deck() -> None:
    """840 x 470 mm on the 10 mm grid: 168 x 94 moves across and along; 5 x 5 m would be a million."""
    assert len(_moves(840, 470)) < 20_000
    assert len(_moves(5000, 5000)) < 45_000
    assert _moves(840, 470)[:4] == [(1, -1, 0), (1, 1, 0), (1, 0, -1), (1, 0, 1)]


def test_a_rig_of_very_many_things_is_given_fewer_trials() -> None:
    """3,600 things may be tried in all: 60 times 60, of 250 things 14 times, of 3,601 none."""
    made = results_of(BOARD + "place {\n  marl at 0, 0 mm\n  hedge at 60, 0 mm\n}\n")
    one = made.rig.places["marl"]
    for things, trials in ((60, 60), (61, 59), (250, 14), (3_600, 1), (3_601, 0)):
        many = Results(made.rig.replace(places={f"t{at}": one for at in range(things)}))
        assert PlaceFinder(many).left == trials


@pytest.mark.parametrize(
    ("left", "help"),
    [
        (2, "mend what else is told of the deck, then check again: the 2 places that one run tries are used up"),
        (1, "mend what else is told of the deck, then check again: the one place that one run tries is used up"),
        (0, "move it by hand: for so many things no place is tried"),
    ],
)
def test_what_is_told_then(left: int, help: str) -> None:
    made = results_of(BOARD + "place {\n  marl at 0, 0 mm\n  hedge at 60, 0 mm\n}\n")
    finder = PlaceFinder(made)
    finder.most, finder.left = left, 0
    (found,) = overlaps(made, finder)
    assert (found.mends, found.help) == ((), help)


def test_so_many_looks_are_all_that_a_run_takes() -> None:
    """Nothing is kept free: each place takes one look; the place to the right lies within the first two thousand."""
    text = BOARD + "place {\n  marl at 0, 0 mm\n  hedge at 60, 0 mm\n}\n"
    for looks, advice in ((2_000, "move 'hedge' 10 mm to the right"), (1, "are used up")):
        made = results_of(text)
        finder = PlaceFinder(made)
        finder.looks = looks
        (found,) = overlaps(made, finder)
        assert advice in found.advice
