"""A short search finds the same places each time, step for step: a slip in how they are sought, measured or weighed lays another board.

Where the search is bettered on purpose the places are others: take them over with `--snapshot-update` when the boards of `tests/bench/`
say that they are no worse.
"""

from __future__ import annotations

import pytest
from cases import ROOT, ExpectedByName, results, told
from syrupy.assertion import SnapshotAssertion
from written import changed

from laying.small_boards import dealt
from rigc.analysis.laying.alternatives import alternatives
from rigc.analysis.laying.checks.contradicting_wishes import contradicting_wishes
from rigc.analysis.laying.checks.missed_wish import missed_wish
from rigc.analysis.laying.checks.wish_against_place import wish_against_place
from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.analysis.laying.objective import objective
from rigc.analysis.laying.place_costs import PlaceCosts
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board, Parting, Tier
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.model.rig import Rig

STEPS = 2_500
FEW = 300
RIGS = ["reach/board", "reach/hints", "reach/rest", "reach/wishes", "reports/askew", "rigs/odd-leads", "rigs/salt-pan"]


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.rpartition("/")[2])
def test_places_of_a_whole_rig(path: str, snapshot: SnapshotAssertion) -> None:
    """Of a rig whose places are taken out: where all stand, what is told of the rest, and what each term of its cost comes to."""
    assert laid_anew(results(ROOT / "tests" / f"{path}.rig").rig) == snapshot(extension_class=ExpectedByName)


@pytest.mark.parametrize("size", ["240 x 200"], ids=["small-hints"])
def test_places_on_a_deck_that_is_too_small(size: str, snapshot: SnapshotAssertion) -> None:
    """Not all has room there: what does, and what is told of the rest."""
    made = changed("tests/reach/hints.rig", ("size 500 x 300 mm", f"size {size} mm"))
    assert laid_anew(made.rig) == snapshot(extension_class=ExpectedByName)


def laid_anew(rig: Rig) -> str:
    """Where all stand in the rig without its places, what each term of that costs, and what is told of the rest."""
    laid, findings = with_chosen_places(rig.replace(places={}), STEPS)
    stands = [f"{name} {each.x_mm:g}, {each.y_mm:g} {each.turned} {each.under}" for name, each in laid.places.items()]
    found = objective(laid, Results(laid).get(Leads))
    assert found is not None
    costs = [f"{each.name}: {each.counted} at {each.share} costs {each.cost}, {each.money}" for each in found.terms]
    made = Results(laid)
    figures = [f"{each.name} = {each.text}: {each.formula()}" for each in made.get(PlaceCosts).all]
    wishes = [each for check in (missed_wish, wish_against_place, contradicting_wishes) for each in made.call(check)]
    return "\n".join((*stands, *costs, *figures, told((*findings, *wishes))))


@pytest.mark.parametrize("path", ["reach/hints", "reach/wishes"], ids=lambda path: f"others-{path.rpartition('/')[2]}")
def test_layouts_to_choose_from(path: str, snapshot: SnapshotAssertion) -> None:
    """Layouts that lean to one term or another: where all stand in each, and what it is better at."""
    bare = results(ROOT / "tests" / f"{path}.rig").rig.replace(places={})
    lines = []
    for each in alternatives(bare, 4, FEW):
        stands = ", ".join(f"{name} {at.x_mm:g} {at.y_mm:g} {at.turned}" for name, at in each.rig.places.items())
        lines.append(f"{stands}: {each.objective.cost}, better at {', '.join(each.better_at)}")
    assert "\n".join(lines) + "\n" == snapshot(extension_class=ExpectedByName)


def crowded(seed: int) -> Board:
    """A dealt board, every other one with all that the rules may ask of one: parts that are kept free, a tier, tapes, partings, knobs, feet."""
    board = dealt(seed, 3 + seed % 6, seed % 2 == 0)
    if seed < 6:
        return board
    items = tuple(
        item.replace(use=(40, -20, 0)[number % 3], grams=300 + 50 * number, grip=150 * (number % 2), under=number == 2)
        for number, item in enumerate(board.items)
    )
    spots = tuple(
        item.replace(shapes=tuple(each.replace(switches=((200, 100),), pressed=((200, 100),), knobs=((100, 400),),
        at_hand=((each.width, 200, 100),), strips=((50, each.depth - 50, 1),)) for each in item.shapes))
        for item in items
    )  # fmt: skip
    links = tuple(link.replace(joint=number % 2 == 1, back=5, onward=True) for number, link in enumerate(board.links))
    made: Board = board.replace(
        items=spots,
        links=links,
        width=board.width + 300,
        depth=board.depth + 400,
        kept_free=((0, 0, 200, 300),),
        reserved=((500, board.depth - 200, 800, board.depth),),
        tiers=(Tier(board.depth - 600, board.depth + 400, 300),) if seed % 3 == 0 else (),
        tapes=((0, 400), (700, 1100), (1400, 1800)),
        partings=(Parting(0, 1, 350),),
        aside=500,
        behind=400,
        apart=30,
        knob=250,
        feet=200,
        grams=2000,
        weighed=True,
        passing=20_000,
        unbalanced=1000,
        gap=2,
        line=3000,
        centring=10,
        crossing=1000,
    )
    return made


@pytest.mark.parametrize("seed", range(12), ids=lambda seed: f"dealt-{seed}")
def test_places_of_a_dealt_board(seed: int, snapshot: SnapshotAssertion) -> None:
    found = search(crowded(seed), STEPS, STEPS)
    assert (
        f"{found.at}\nhard {found.hard}, missed {found.missed}, cost {found.cost}, steps {found.steps}\n"
        == snapshot(extension_class=ExpectedByName)
    )
