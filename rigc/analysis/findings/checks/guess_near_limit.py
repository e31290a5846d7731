"""A figure that was assumed, or a current copied from a leaflet, could carry a result over its limit.

Why it matters: a leaflet's current is a typical one, and a guess is a guess: measured, the result may lie beyond the limit.
What to do: measure it before anything is cut or bought, and state it as `measured`.
Source: common practice, no source. A result counts where it is within {guesses.NEAR_SHARE} of its limit and the guesses in a sum are at least as
large as its distance from it: loads of outlets, totals of supplies, voltages against what a unit accepts, drops of leads,
lengths of leads that exist, heights below lids and decks, the mass of the board, the hold of strips, the cable that an
instrument drives. Or it counts where guesses that are off as guesses of their kind usually are would carry it over: loads on
outputs and treble corners (an impedance by {guesses.IMPEDANCE_SPREAD}, cable by {guesses.CABLE_CAPACITANCE_SPREAD}), margins and levels at inputs ({guesses.LEVEL_SPREAD_DB}), paths side by side (a
latency by {guesses.LATENCY_SPREAD}), the height in a case and the air before vents (a size by {guesses.SIZE_SPREAD_MM}), heat over a supply ({guesses.HEAT_SPREAD}), where a deck
balances (a mass by {guesses.MASS_SPREAD}); several are added by their squares, for they are not all off the same way.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.findings.limits.balance_limits import balances_near
from rigc.analysis.findings.limits.bridging_limits import bridging_near
from rigc.analysis.findings.limits.case_limits import case_heights_near
from rigc.analysis.findings.limits.corner_limits import corners_near
from rigc.analysis.findings.limits.heat_limits import heat_near, vents_near
from rigc.analysis.findings.limits.latency_limits import latencies_near
from rigc.analysis.findings.limits.length_limits import heights_near, lengths_near
from rigc.analysis.findings.limits.level_limits import levels_near
from rigc.analysis.findings.limits.mass_limits import masses_near, strips_near
from rigc.analysis.findings.limits.power_limits import ceilings_near, drops_near, load_limits_near, windows_near
from rigc.analysis.findings.limits.signal_limits import cables_near
from rigc.analysis.findings.near_limit import NearLimit
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.power.lead_drops import LeadDrops
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.analysis.weight.case_loads import CaseLoads
from rigc.analysis.weight.mass import Mass
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.rig import Rig

KIND = Kind(
    "guess-near-limit",
    Level.WARNING,
    __doc__,
    "no figure that was not measured could carry a result over its limit",
    "common practice, no source",
)


def guess_near_limit(
    rig: Rig,
    power: PowerAssignment,
    joint: JointLoads,
    totals: SupplyTotals,
    limits: LoadLimits,
    placement: Placement,
    leads: Leads,
    lengths: CableLengths,
    drops: LeadDrops,
    loads: CaseLoads,
    strips: MountingStrip,
    loading: Loading,
    levels: Levels,
    paths: ParallelPaths,
    mass: Mass,
) -> Iterator[Diagnostic]:
    """One finding for each thing whose guesses drive results near their limits."""
    near = [
        *load_limits_near(rig, joint, limits),
        *ceilings_near(rig, power, totals, limits),
        *windows_near(rig, power),
        *drops_near(rig, drops),
        *heights_near(rig, placement),
        *lengths_near(rig, leads, lengths),
        *masses_near(rig, loads),
        *strips_near(rig, strips),
        *cables_near(rig, leads, loading),
        *bridging_near(rig, loading),
        *corners_near(loading),
        *levels_near(levels),
        *latencies_near(paths),
        *heat_near(rig, placement),
        *vents_near(rig, placement),
        *case_heights_near(rig, placement),
        *balances_near(rig, mass),
    ]
    by_thing: dict[str, list[NearLimit]] = {}
    for each in near:
        by_thing.setdefault(each.guess.thing, []).append(each)
    for thing, results in by_thing.items():
        yield _told(thing, results)


def _told(thing: str, results: list[NearLimit]) -> Diagnostic:
    first = results[0]
    fact, kind = first.guess.fact, first.guess.fact.provenance.kind if first.guess.fact.provenance else ""
    known = "from a leaflet" if kind == "leaflet" else "assumed"
    facts = {each.guess.fact.span: each for each in results[1:] if each.guess.fact.span is not fact.span}
    return KIND.at(
        fact.span,
        f"{first.guess.what}, {fact.typed}, is {known}, and {_result(first)}",
        subject=(thing,),
        label="not measured",
        also=tuple(Label(each.guess.fact.span, f"nor this: {_result(each)}") for each in facts.values()),
        numbers=(Number("value", first.value, first.unit), Number("near limit", first.limit, first.unit)),
        note="; ".join(
            filter(None, (_off(first), *(_result(each) for each in results[1:] if each.guess.fact.span is fact.span)))
        ),
        help="measure it before anything is cut or bought",
    )


def _off(each: NearLimit) -> str:
    return f"a guess of it may be off by {each.off}" if each.off else ""


def _result(each: NearLimit) -> str:
    value, limit = (decimals(number, 3) for number in (each.value, each.limit))
    return f"{each.what} is {value} {each.unit} where the limit is {limit} {each.unit}"


CHECK = guess_near_limit
