"""Rig -> which outlet feeds which unit: what the source states is kept, the rest is chosen."""

from __future__ import annotations

from functools import cached_property

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.choice.open_outlets import known_needs, left_open, open_problem, stated_taps
from rigc.analysis.feeds.choice.order_of_merit import Levels
from rigc.analysis.feeds.choice.outlet_choice import OutletChoice, chosen
from rigc.analysis.feeds.choice.unfed import Unfed
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_fit import reversing
from rigc.analysis.feeds.outlet_loads import OutletLoad, outlet_loads
from rigc.analysis.feeds.power_tap import Tap
from rigc.analysis.previous import NOTHING_BEFORE, Previous, followed
from rigc.analysis.results import Results
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class Supplied(Record):
    """A unit and where it takes its power: `volts` V of kind `current`, `how` `` (alone), `shared`, `series` or `parallel`.

    `reversed`: through a reversing lead. `stated`: the source says so; else it was chosen and `span` is the unit's. `lower` is the
    outlet of a series pair whose return is the pair's, where that is stated.
    """

    unit: str
    outlets: tuple[Port, ...]
    volts: float
    current: str
    how: str
    reversed: bool
    stated: bool
    span: Span
    lower: Port | None = None


class PowerAssignment(Record):
    """Who is fed from where (stated feeds first, then chosen ones, each in the source's order), and who is not and why.

    `taps` tells by unit what it stands on; `loads` has every outlet of every supply in use; `reserved` the outlets that are
    kept for later, with what for; `steps` counts what the choice took.

    `objective` is what the chosen feeds come to and `bound` what every choice comes to at least: equal where it is `proved` that
    there is none better. `unmeasured` are those chosen feeds whose lead could not be measured and counts 0.
    """

    feeds: tuple[Supplied, ...]
    loads: dict[Port, OutletLoad]
    unfed: tuple[Unfed, ...]
    taps: dict[str, Tap]
    reserved: dict[Port, str]
    steps: int
    proved: bool = True
    objective: Levels = Levels()
    bound: Levels = Levels()
    unmeasured: tuple[str, ...] = ()

    def of(self, unit: str) -> Supplied | None:
        """Where that unit takes its power; None if nowhere."""
        return self._of.get(unit)

    @cached_property
    def _of(self) -> dict[str, Supplied]:
        return {feed.unit: feed for feed in reversed(self.feeds)}


def power_assignment(
    rig: Rig, limits: LoadLimits, places: Placement, previous: Previous = NOTHING_BEFORE
) -> PowerAssignment:
    """The stated feeds, and an outlet for every other unit that is used and needs one: where nothing speaks against it the one that it had in
    the revision before."""
    stated = stated_taps(rig)
    choice, unmeasured = _chosen(rig, limits, stated, places, _fed_before(rig, followed(rig, previous)))
    taps = {**stated, **choice.taps}
    in_use = {port.thing for each in taps.values() for port in each.outlets} | set(rig.power.others)
    supplies = tuple(name for name in rig.supplies if name in in_use)
    loads = outlet_loads(rig, supplies, taps)
    return PowerAssignment(
        _supplied(rig, taps, loads),
        loads,
        choice.unfed,
        taps,
        choice.reserved,
        choice.steps,
        choice.proved,
        choice.objective,
        choice.bound,
        unmeasured,
    )


def _fed_before(rig: Rig, before: Results | None) -> dict[str, Port]:
    """By unit, the outlet that fed it, or the one in whose stead it stands, alone or with others; that of a supply's successor by its name."""
    if before is None:
        return {}
    heirs = {each.stands_in: name for name, each in rig.supplies.items() if each.stands_in is not None}
    had = {
        feed.unit: Port(heirs.get(feed.outlets[0].thing, feed.outlets[0].thing), feed.outlets[0].jack)
        for feed in before.get(PowerAssignment).feeds
        if len(feed.outlets) == 1
    }
    return {unit.name: had[name] for unit in rig.units.values() if (name := unit.stands_in or unit.name) in had}


def _chosen(
    rig: Rig, limits: LoadLimits, stated: dict[str, Tap], places: Placement, before: dict[str, Port]
) -> tuple[OutletChoice, tuple[str, ...]]:
    units = left_open(rig)
    known = known_needs(units)
    unfed = [Unfed("unknown needs", (unit.name,), (), unit.declared) for unit in units if unit not in known]
    names = tuple(unit.name for unit in known)
    if not known and not rig.power.reserved:
        return OutletChoice(unfed=tuple(unfed)), ()
    problem = open_problem(rig, stated, places, before)
    if known and not rig.power.others:
        unfed.insert(0, Unfed("no word", names, (), known[0].declared))
    elif known and not problem.sites:
        unfed.append(Unfed("no outlets", names, (), rig.power.others_span or rig.end))
        return OutletChoice(unfed=tuple(unfed)), ()
    if not problem.units:
        return OutletChoice(unfed=tuple(unfed)), ()
    choice = chosen(rig, limits, problem)
    unmeasured = tuple(name for name, each in choice.taps.items() if (name, each.outlets[0]) not in problem.lengths_mm)
    return choice.replace(unfed=(*unfed, *choice.unfed)), unmeasured


def _supplied(rig: Rig, taps: dict[str, Tap], loads: dict[Port, OutletLoad]) -> tuple[Supplied, ...]:
    spans = {name: feed.span for feed in rig.power.feeds for name in feed.units}
    turned = reversing(rig)
    return tuple(
        Supplied(
            name,
            each.outlets,
            each.volts,
            each.current,
            each.how or ("shared" if any(len(loads[port].units) > 1 for port in each.outlets) else ""),
            name in turned,
            name in spans,
            spans.get(name, rig.units[name].declared),
            each.lower,
        )
        for name, each in taps.items()
    )


COMPUTE = power_assignment
