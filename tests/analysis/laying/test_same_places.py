"""A short search finds the same places each time, step for step: a slip in how they are sought, measured or weighed lays another board.

Where the search is bettered on purpose the places are others: take them over with `--snapshot-update` when the boards of `tests/bench/`
say that they are no worse.
"""

from __future__ import annotations

import pytest
from cases import ROOT, ExpectedByName, results, told
from syrupy.assertion import SnapshotAssertion
from written import changed

from laying.heard import heard, in_words
from laying.small_boards import crowded, panelled
from rigc.analysis.laying.alternatives import alternatives
from rigc.analysis.laying.checks.contradicting_wishes import contradicting_wishes
from rigc.analysis.laying.checks.missed_wish import missed_wish
from rigc.analysis.laying.checks.wish_against_place import wish_against_place
from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.analysis.laying.objective import objective
from rigc.analysis.laying.place_costs import PlaceCosts
from rigc.analysis.laying.search.annealing import search
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
    """Where all stand in the rig without its places, what each term of that costs, what is told of the rest, and what the parts of the search said."""
    with heard() as talk:
        laid, findings = with_chosen_places(rig.replace(places={}), STEPS)
    stands = [f"{name} {each.x_mm:g}, {each.y_mm:g} {each.turned} {each.under}" for name, each in laid.places.items()]
    found = objective(laid, Results(laid).get(Leads))
    assert found is not None
    costs = [f"{each.name}: {each.counted} at {each.share} costs {each.cost}, {each.money}" for each in found.terms]
    made = Results(laid)
    figures = [f"{each.name} = {each.text}: {each.formula()}" for each in made.get(PlaceCosts).all]
    wishes = [each for check in (missed_wish, wish_against_place, contradicting_wishes) for each in made.call(check)]
    return "\n".join((*stands, *costs, *figures, told((*findings, *wishes)), in_words(talk)))


@pytest.mark.parametrize("path", ["reach/hints", "reach/wishes"], ids=lambda path: f"others-{path.rpartition('/')[2]}")
def test_layouts_to_choose_from(path: str, snapshot: SnapshotAssertion) -> None:
    """Layouts that lean to one term or another: where all stand in each, and what it is better at."""
    bare = results(ROOT / "tests" / f"{path}.rig").rig.replace(places={})
    lines = []
    for each in alternatives(bare, 4, FEW):
        stands = ", ".join(f"{name} {at.x_mm:g} {at.y_mm:g} {at.turned}" for name, at in each.rig.places.items())
        better = ", ".join(f"{one.term} by {one.less}" for one in each.better_at)
        lines.append(f"{stands}: {each.objective.cost}, better at {better}")
    assert "\n".join(lines) + "\n" == snapshot(extension_class=ExpectedByName)


BOARDS = {
    **{f"dealt-{seed}": crowded(seed) for seed in range(12)},
    **{f"panelled-{seed}": panelled(seed) for seed in (1, 2, 4)},
}


@pytest.mark.parametrize("name", BOARDS)
def test_places_of_a_dealt_board(name: str, snapshot: SnapshotAssertion) -> None:
    """And what the parts of the search asked each other and answered on the way."""
    with heard() as talk:
        found = search(BOARDS[name], STEPS, STEPS if name.startswith("dealt") else 0)
    said = f"{found.at}\nhard {found.hard}, missed {found.missed}, cost {found.cost}, steps {found.steps}\n"
    assert said + in_words(talk) == snapshot(extension_class=ExpectedByName)
