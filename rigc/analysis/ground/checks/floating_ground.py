"""Grounds that are joined with each other are nowhere joined with earth.

Why it matters: the board buzzes until the strings are touched, and the leakage of switch-mode supplies tingles.
What to do: join the board with one earthed amp or desk by a plain lead; where a ground lift would do it, `wrong-ground-lift` tells that.
Source: common practice, no source: exactly one earth for each joined ground system.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.lift_faults import LiftFaults
from rigc.analysis.ground.ring_words import in_scenarios
from rigc.analysis.ground.states import GroundSystem
from rigc.analysis.signal.open_ends import OpenEnds
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import listed, listed_few
from rigc.model.rig import Rig
from rigc.model.slips.torn_chains import torn_chains
from rigc.model.ways.ground_link import GROUND

KIND = Kind(
    "floating-ground",
    Level.WARNING,
    __doc__,
    "a joined ground system has one earth reference in each scenario",
    "common practice, no source",
)


def floating_ground(
    rig: Rig, grounds: GroundSystems, ends: OpenEnds, lifts: LiftFaults, power: PowerAssignment
) -> Iterator[Diagnostic]:
    """One finding for each system of two things or more without earth that sound goes through and mains reach; can't-check where a fact
    may bring one.

    What reaches no amp, none of those in use, or stands on a torn chain, or behind a lift that is open, has no earth for that reason, which is told already.
    """
    stuck = {*ends.stuck, *torn_chains(rig)}
    floating: dict[GroundSystem, list[str]] = {}
    for state in grounds.states:
        played = [name for name in state.scenarios if name in rig.scenarios]
        heard = set.union(set(), *(_plays_into(rig, name) for name in played)) if played else None
        for system in state.systems:
            members = _members(rig, system)
            if heard is not None and not heard & {*members}:
                continue
            apart = (stuck | lifts.bare_in(state.scenarios)) & {*members}
            if system.earths or system.silent or len(members) < 2 or apart:
                continue
            if _mains_reach(rig, power, system):
                floating.setdefault(system, []).extend(state.scenarios)
    for system, names in floating.items():
        yield _told(rig, system, names)


def _plays_into(rig: Rig, scenario: str) -> set[str]:
    """The amps in use in a scenario, and all from which sound comes to them there: what does not stays unplugged."""
    amps = rig.scenarios[scenario].amps
    heard = {unit.name for unit in rig.units.values() if unit.ends} if amps is None else {*amps}
    joined = [each for each in rig.connections if not each.when.scenarios or scenario in each.when.scenarios]
    while more := {each.start.thing for each in joined if each.end.thing in heard} - heard:
        heard |= more
    return heard


def _members(rig: Rig, system: GroundSystem) -> list[str]:
    return [thing for thing, part in system.poles if part == GROUND and thing in rig.units]


def _mains_reach(rig: Rig, power: PowerAssignment, system: GroundSystem) -> bool:
    """Whether something in it takes mains, whose leakage wants an earth, or may: only a system of batteries, and of what takes no power,
    has none."""
    taken = {_takes_mains(rig, power, thing) for thing, part in system.poles if part == GROUND}
    return bool(system.unknown or system.open_ends) or True in taken or False not in taken


def _takes_mains(rig: Rig, power: PowerAssignment, name: str) -> bool | None:
    """Whether it does, itself or by what feeds it, or runs on a battery; None where it is not known to take any power."""
    thing = rig.units.get(name)
    if thing is None:
        source = rig.instruments.get(name)
        return True if source is not None and source.may_be_earthed else None
    if thing.on_battery:
        return False
    feed = power.of(name)
    if feed is not None:
        return any(rig.supplies[port.thing].takes_mains for port in feed.outlets)
    return True if thing.may_be_earthed or (thing.inlet and thing.inlet.takes_mains) else None


def _told(rig: Rig, system: GroundSystem, names: list[str]) -> Diagnostic:
    members, where = _members(rig, system), in_scenarios(rig, names)
    lifts = any(jack.lift == "unknown" for name in members for jack in rig.units[name].jacks)
    span = rig.scenarios[names[0]].declared if names else rig.things[members[0]].declared
    who = listed(members) if len(members) < 4 else f"'{members[0]}' and {len(members) - 1} more"
    if system.unknown:
        return KIND.cant_check(
            rig.things[system.unknown[0]].declared,
            f"nothing says that {listed(system.unknown)} {'is' if len(system.unknown) == 1 else 'are'} earthed; "
            f"whether {who} have an earth can't be checked{where}",
            subject=(*system.unknown, *members),
            help=f"write `earthed` or `double-insulated` in '{system.unknown[0]}'",
        )
    declared = any(unit.ends for unit in rig.units.values())
    if system.open_ends or not declared:
        why = f"nothing is plugged into {listed(system.open_ends)}" if declared else "no amp or desk is declared"
        return KIND.cant_check(
            span,
            f"{why}; whether {who} have an earth can't be checked{where}",
            subject=tuple(members),
            help="declare the amp or desk and a chain to it",
        )
    return KIND.at(
        span,
        f"the joined grounds of {who} have no earth{where}",
        subject=tuple(members),
        label="floats here" if names else "one of them",
        note=f"joined: {listed_few(members)}" if len(members) > 3 else "",
        help=f"{'close a ground lift, or ' if lifts else ''}join one earthed amp or desk by a plain lead",
    )


CHECK = floating_ground
