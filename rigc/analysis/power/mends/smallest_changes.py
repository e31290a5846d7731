"""A set of units in each other's way -> the smallest changes of the source that give them all an outlet, each tried first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.choice.conflict_set import feasible
from rigc.analysis.feeds.choice.open_outlets import open_problem, stated_taps
from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.analysis.feeds.choice.problem_in_numbers import any_placing
from rigc.analysis.feeds.choice.unfed import Unfed
from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.power.mends.changes_to_try import KINDS, Change, one_more, sized_and_reversing
from rigc.diagnostics.mend import Mend
from rigc.model.rig import Rig

MOST = 3  # proposals
MOST_TRIES = 40  # of each kind


def mends(
    rig: Rig, places: Placement, limits: LoadLimits, unfed: Unfed, apart: frozenset[str] = frozenset()
) -> tuple[tuple[Mend, ...], str]:
    """The changes that are edits; and in words, `or` between them, those that are not. Nothing where none was found."""
    found = mending_changes(rig, places, limits, unfed, apart)
    edits = tuple(Mend(each.words, each.edits) for each in found if each.edits)
    return edits, "; or ".join(each.words for each in found if not each.edits)


def mending_changes(
    rig: Rig, places: Placement, limits: LoadLimits, unfed: Unfed, apart: frozenset[str] = frozenset()
) -> tuple[Change, ...]:
    """Up to MOST changes, the first of each kind, after each of which all units have an outlet within `limits` (those `apart` left aside); where no
    change does that, such after which the units of the set have one.

    The smallest come first: a fact, a lead, a wish given up, a unit moved, a pair in parallel. One outlet more is the last, where
    all others are edits: what the rules forbid after an edit is not known here.
    """
    problem = open_problem(rig, stated_taps(rig), places)
    open_now = {unit.name for unit in problem.units}
    others = frozenset(apart | (open_now - set(unfed.units)))
    for aside in dict.fromkeys((apart, others)):

        def first(changes: Iterator[Change], aside: frozenset[str] = aside) -> Change | None:
            tried = islice(changes, MOST_TRIES)
            return next((each for each in tried if _mended(problem, each.rig, places, limits, aside)), None)

        kinds = (first(kind(rig, problem, limits, unfed)) for kind in KINDS)
        found = tuple(islice((each for each in kinds if each is not None), MOST))
        if not found:
            both = first(sized_and_reversing(rig, problem, unfed))
            found = () if both is None else (both,)
        more = first(one_more(rig, unfed)) if all(each.edits for each in found) else None
        if found or more:
            return (*found, *((more,) if more is not None else ()))
    return ()


def _mended(before: OutletProblem, changed: Rig, places: Placement, limits: LoadLimits, aside: frozenset[str]) -> bool:
    problem = open_problem(changed, stated_taps(changed), places)
    units = tuple(unit for unit in problem.units if unit.name not in aside)
    return _sound(before, problem, limits) and feasible(any_placing(problem.replace(units=units), limits))


def _sound(before: OutletProblem, after: OutletProblem, limits: LoadLimits) -> bool:
    """Whether a change leaves the ceilings and the outlets to be kept free alone, at least where they were not broken before."""
    for supply, ceiling in after.ceilings.items():
        was = before.ceilings.get(supply, ceiling).taken
        if ceiling.taken > was and exceeds(ceiling.taken, limits.total_pct, ceiling.most):
            return False
    return all(_empty(after, supply) >= min(count, _empty(before, supply)) for supply, count in after.spare.items())


def _empty(problem: OutletProblem, supply: str) -> int:
    return sum(not site.tenants and supply in ("", site.outlet.thing) for site in problem.sites)
