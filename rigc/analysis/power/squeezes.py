"""Loads beyond the rules of thumb -> the sets of units that can't all stand within them, whichever outlets they take."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.choice.conflict_set import conflict_set, feasible
from rigc.analysis.feeds.choice.open_outlets import open_problem, stated_taps
from rigc.analysis.feeds.choice.problem_in_numbers import any_placing
from rigc.analysis.feeds.choice.unfed import Unfed
from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.power.joint_loads import JointLoad, JointLoads
from rigc.model.rig import Rig
from rigc.model.wishes import Feed
from rigc.record import Record


class Squeezes(Record):
    """The sets of units, and the rig in which they were found: as it is, but with every feed open that could be chosen anew.

    A stated feed counts as much as a chosen one, so that nothing changes when chosen feeds are written into the source.
    """

    all: tuple[Unfed, ...]
    rig: Rig

    def loads(self, squeeze: Unfed, joint: JointLoads, limits: LoadLimits) -> tuple[JointLoad, ...]:
        """The loads beyond the rules of thumb on which units of the set stand."""
        wanted = set(squeeze.units)
        return tuple(load for load in joint.all if wanted & set(load.units) and _beyond(load, limits))


def squeezes(rig: Rig, power: PowerAssignment, joint: JointLoads, limits: LoadLimits, places: Placement) -> Squeezes:
    """Looks only where some outlet is loaded beyond the rules. A unit that no outlet suits within them is no set: what is said
    of its outlet is all there is to say."""
    if not rig.power.others or not any(_beyond(load, limits) for load in joint.all):
        return Squeezes((), rig)
    feeds = tuple(feed for feed in rig.power.feeds if not _open(rig, feed))
    opened = rig.replace(power=rig.power.replace(feeds=feeds))
    problem = open_problem(opened, stated_taps(opened), places)
    unfed = {name for each in power.unfed for name in each.units}
    problem = problem.replace(units=tuple(unit for unit in problem.units if unit.name not in unfed))
    rules, found = limits.replace(total_pct=100.0), list[Unfed]()
    while not feasible(any_placing(problem, rules)):
        found.append(conflict_set(opened, problem, rules))
        problem = problem.replace(units=tuple(unit for unit in problem.units if unit.name not in found[-1].units))
    return Squeezes(tuple(each for each in found if len(each.units) > 1), opened)


def _beyond(load: JointLoad, limits: LoadLimits) -> bool:
    return exceeds(load.known_ma, limits.digital_pct if load.digital else limits.load_pct, load.limit_ma)


def _open(rig: Rig, feed: Feed) -> bool:
    """Whether the feed could have been chosen: from one outlet of a supply to choose from, shared only where that is allowed."""
    if len(feed.outlets) > 1 or any(port.thing not in rig.power.others for port in feed.outlets):
        return False
    return len(feed.units) == 1 or any(set(feed.units) <= set(group) for group in rig.power.may_share)


COMPUTE = squeezes
