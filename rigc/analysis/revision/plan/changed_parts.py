"""The pieces of a rework -> the things whose tests no longer hold: each with the change that it belongs to."""

from __future__ import annotations

from rigc.analysis.feeds.outlet_bearing import unknown_start
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.revision.plan.leads.plan import NEW, REMAKE, LeadPlan
from rigc.analysis.revision.plan.leads.steps import on_new_deck
from rigc.analysis.revision.plan.plan_records import UnitPlan
from rigc.analysis.revision.plan.rework_pieces import Pieces
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record

Parts = dict[str, int | None]
"""Names of things, numbers of leads, or outlets as text, with the number of their change."""


class ChangedParts(Record):
    """By kind: audio leads that are made or cut; control and MIDI leads that are (`wired`); outlets that feed others, or through another lead; units to be read under load (those on such
    an outlet, or on one with the same return); units fed otherwise that may start hungrily; units that sound
    through other leads or on other power; whether the way past the loops is touched (`through`); units under MIDI
    and control that is touched; supplies and panels that come or go; units that come."""

    cut: Parts
    wired: Parts
    outlets: Parts
    loaded: Parts
    starting: Parts
    sounding: Parts
    through: Parts
    midi: Parts
    control: Parts
    mains: Parts
    supplies: Parts
    come: Parts


def changed_parts(old: Rig, rig: Rig, power: PowerAssignment, pieces: Pieces) -> ChangedParts:
    """Of things that stand on the new board; what is done already counts like the rest, since it is tested once for
    all."""
    stay = [plan for plan in pieces.leads if plan.after is not None]
    laid_again = [plan for plan in stay if on_new_deck(plan, pieces)]
    held = [plan for plan in stay if handled(plan) or plan in laid_again]
    fed = {plan.unit: plan.change for plan in pieces.feeds if plan.after is not None}
    outlets = {port: plan.change for plan in pieces.feeds if plan.after is not None for port in plan.after.outlets}
    anew = [plan for plan in stay if _made(plan) or plan.spare]
    outlets = {port: plan.change for plan in (*laid_again, *anew) for port in _outlets(rig, plan)} | outlets
    midi = {_end(plan, 1): plan.change for plan in held if _signal(plan) == "midi"}
    midi |= {plan.unit: plan.change for plan in pieces.channels if plan.after is not None}
    lifted = {plan.name.partition(".")[0]: plan.change for plan in pieces.fittings if plan.kind == "lift"}
    return ChangedParts(
        {plan.mark: plan.change for plan in stay if _carries(plan) == "audio" and _made(plan)},
        {plan.mark: plan.change for plan in anew if _carries(plan) in ("midi", "control")},
        {str(port): change for port, change in outlets.items()},
        {unit: change for port, change in outlets.items() for unit in _sharing(rig, power, port)},
        {unit: change for unit, change in fed.items() if unknown_start(rig.units[unit])},
        _sounding(rig, held, pieces.units, fed, lifted),
        {plan.mark: plan.change for plan in held if _signal(plan) == "audio" and not _in_loop(rig, plan)},
        midi,
        {_end(plan, 0): plan.change for plan in held if _signal(plan) == "control"},
        _mains(old, rig, pieces),
        {port.thing: change for port, change in outlets.items()},
        {plan.name: plan.change for plan in pieces.units if _comes(plan)},
    )


def _comes(plan: UnitPlan) -> bool:
    return plan.there_after and not plan.there_before


def handled(plan: LeadPlan) -> bool:
    """Whether an end of the lead is pulled out and plugged in, or the lead is another."""
    return plan.verdict in (NEW, REMAKE) or bool(
        plan.moved or plan.swapped or plan.adaptor or plan.plugged or plan.spare
    )


def _made(plan: LeadPlan) -> bool:
    return plan.verdict in (NEW, REMAKE) or bool(plan.plugged)


def _carries(plan: LeadPlan) -> str:
    """Its signal, on the stage too: a lead is measured before it goes there."""
    return "" if plan.after is None else plan.after.signal


def _signal(plan: LeadPlan) -> str:
    return "" if plan.after is None or plan.after.stage else plan.after.signal


def _end(plan: LeadPlan, end: int) -> str:
    assert plan.after is not None and plan.after.ends is not None
    return plan.after.ends[end].thing


def _outlets(rig: Rig, plan: LeadPlan) -> list[Port]:
    """The outlets from which a lead comes."""
    ends = () if plan.after is None else plan.after.ends or ()
    return [port for port in ends if outlet_at(rig, port) is not None]


def _sharing(rig: Rig, power: PowerAssignment, port: Port) -> list[str]:
    """The units on an outlet, and those on outlets that share its return."""
    outlet = outlet_at(rig, port)
    group = None if outlet is None else outlet.common
    found: list[str] = []
    for other, load in power.loads.items():
        there = outlet_at(rig, other)
        same = group is not None and there is not None and there.common == group and other.thing == port.thing
        if other == port or same:
            found += load.units
    return found


def _sounding(rig: Rig, held: list[LeadPlan], units: tuple[UnitPlan, ...], fed: Parts, lifted: Parts) -> Parts:
    """Units at the ends of a lead that was in a hand (in a loop, not its switcher), units that come, units whose ground is lifted
    otherwise, units fed otherwise."""
    found: Parts = {}
    for plan in held:
        if _signal(plan) == "audio":
            inside = _in_loop(rig, plan)
            found |= {
                name: plan.change for name in (_end(plan, 0), _end(plan, 1)) if not (inside and rig.things[name].loops)
            }
    found |= {plan.name: plan.change for plan in units if _comes(plan)}
    found |= lifted
    found |= fed
    return {name: change for name, change in found.items() if name in rig.units}


def _in_loop(rig: Rig, plan: LeadPlan) -> bool:
    assert plan.after is not None
    ends = set(plan.after.ends or ())
    return any({each.start, each.end} == ends and each.origin.startswith("loop ") for each in rig.connections)


def _mains(old: Rig, rig: Rig, pieces: Pieces) -> Parts:
    """Supplies and units on mains that come, go or move, panels whose inlet is set or moved, and what a mains lead that comes, goes or
    moves is plugged into."""
    on_mains = {*rig.supplies, *old.supplies}
    on_mains |= {unit.name for each in (rig, old) for unit in each.units.values() if unit.own_mains}
    found = {plan.name: plan.change for plan in pieces.units if plan.name in on_mains}
    for lead in pieces.leads:
        sides = [side for side in (lead.before, lead.after) if side is not None and side.signal == "mains"]
        if lead.after is None or handled(lead):
            found |= {port.thing: lead.change for side in sides for port in side.ends or ()}
    return found | {plan.on: plan.change for plan in pieces.fittings if plan.mains and plan.after}
