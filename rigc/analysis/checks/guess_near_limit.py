"""A figure that was assumed, or a current copied from a leaflet, drives a result within 15 % of a limit.

Why it matters: a leaflet's current is a typical one, and a guess is a guess: measured, the result may lie beyond the limit.
What to do: measure it before anything is cut or bought, and state it as `measured`.
Source: common practice, no source. Judged are loads of outlets, totals of supplies, voltages against what a unit accepts,
drops of leads, lengths of leads that exist, heights below lids and decks, the mass of the board, the hold of strips, the
cable that an instrument drives; a sum counts where the guesses in it are at least as large as its distance from the limit.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.case_loads import CaseLoads
from rigc.analysis.computations.joint_loads import JointLoads
from rigc.analysis.computations.lead_drops import LeadDrops
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.computations.loading import Loading
from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.computations.placement import Placement
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.supply_totals import SupplyTotals
from rigc.analysis.guesses.length_limits import heights_near, lengths_near
from rigc.analysis.guesses.mass_limits import masses_near, strips_near
from rigc.analysis.guesses.near_limit import NearLimit
from rigc.analysis.guesses.power_limits import ceilings_near, drops_near, load_limits_near, windows_near
from rigc.analysis.guesses.signal_limits import cables_near
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.rig import Rig

KIND = Kind(
    "guess-near-limit",
    Level.WARNING,
    __doc__,
    "no result within 15 % of its limit leans on a figure that was not measured",
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
        note="; ".join(_result(each) for each in results[1:] if each.guess.fact.span is fact.span),
        help="measure it before anything is cut or bought",
    )


def _result(each: NearLimit) -> str:
    value, limit = (decimals(number, 3) for number in (each.value, each.limit))
    return f"{each.what} is {value} {each.unit} where the limit is {limit} {each.unit}"


CHECK = guess_near_limit
