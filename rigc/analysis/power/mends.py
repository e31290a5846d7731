"""A set of units in each other's way -> the smallest changes of the source that give them all an outlet, each tried first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, combinations

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.computations.placement import Placement
from rigc.analysis.power.conflict_set import feasible
from rigc.analysis.power.open_problem import open_problem, stated_taps
from rigc.analysis.power.outlet_bearing import bears, drawn_ma, unknown_start
from rigc.analysis.power.outlet_fit import fits, resized, reversing
from rigc.analysis.power.outlet_problem import RESERVE, OutletProblem, Site
from rigc.analysis.power.outlet_sharing import mixes
from rigc.analysis.power.power_tap import Tap, outlet_at, tap
from rigc.analysis.power.rivals_words import joined
from rigc.analysis.power.unfed import Unfed
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Rating, Unit
from rigc.model.wishes import Feed

MOST = 3  # proposals
MOST_TRIES = 80

Change = tuple[str, Rig]


def mends(rig: Rig, places: Placement, limits: LoadLimits, unfed: Unfed) -> tuple[str, ...]:
    """Up to MOST changes, in words, after each of which the units of the set all have an outlet within `limits`.

    The smallest come first: a fact, a wish given up, a unit moved, a pair in parallel, an outlet more.
    """
    problem = open_problem(rig, stated_taps(rig), places)
    found: list[str] = []
    tries = 0
    kinds = (_measured, _more_supplies, _fewer_kept, _fewer_reserved, _not_alone, _sharing, _unpinned, _in_parallel)
    for words, changed in chain.from_iterable(kind(rig, problem, limits, unfed) for kind in kinds):
        tries += 1
        if len(found) == MOST or tries > MOST_TRIES:
            break
        if _mended(changed, places, limits, unfed):
            found.append(words)
    if not found:
        found += [words for words, changed in _one_more(rig, limits, unfed) if _mended(changed, places, limits, unfed)]
    return tuple(found)


def _mended(changed: Rig, places: Placement, limits: LoadLimits, unfed: Unfed) -> bool:
    problem = open_problem(changed, stated_taps(changed), places)
    stated = {name for feed in changed.power.feeds for name in feed.units}
    names = {*unfed.units} | {unit.name for unit in problem.units if unit.name not in unfed.units and _freed(unit, unfed)}
    units = tuple(unit for unit in problem.units if unit.name in names and unit.name not in stated)
    return feasible(problem.replace(units=units), limits)
