"""A parallel lead joins outlets of unequal voltage, of different supplies, of AC, or that are not isolated from each other.

Why it matters: the outlet of the higher voltage feeds the other one backwards; regulators of different supplies fight;
windings against each other's phase are a short.
What to do: use two isolated outlets of one supply at one voltage; reckon with {power.PARALLEL_SHARE} of the sum of their ratings.
Source: physics: a parallel connection; the {power.PARALLEL_SHARE} are common practice, no source. Only where the supply's maker allows it.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.joined_outlets import equal_volts, pair_names, pair_volts, shared_common
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap
from rigc.analysis.power.mends.other_feeds import moves
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.facts.power import PARALLEL_SHARE
from rigc.model.rig import Rig

KIND = Kind(
    "unfit-parallel-lead",
    Level.ERROR,
    __doc__,
    "parallel: one supply, DC, equal voltage, isolated from each other",
    "physics: a parallel connection",
)


def unfit_parallel_lead(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each unit on a parallel lead that can't be."""
    for feed in power.feeds:
        each = power.taps[feed.unit]
        faults = _faults(rig, each) if each.how == "parallel" else []
        if faults:
            yield KIND.at(
                feed.span,
                f"'{feed.unit}' is fed in parallel from {pair_names(each)}, {faults[0]}",
                subject=(feed.unit, *(str(port) for port in each.outlets)),
                label="this parallel lead",
                numbers=(Number("rating", each.limit_ma, "mA"),),
                note="; ".join(faults[1:]),
                mends=moves(rig, power, feed.unit, limits),
                otherwise=_otherwise(each),
            )


def _otherwise(each: Tap) -> str:
    if each.current == "ac":
        return (
            "no move or exchange does it: use one winding that bears it, or ask the supply's maker how they are joined"
        )
    return (
        "no move or exchange does it: use two isolated outlets of one supply at one voltage, which give "
        f"{PARALLEL_SHARE.value:g} % of the sum of their ratings"
    )


def _faults(rig: Rig, each: Tap) -> list[str]:
    faults = []
    common = shared_common(rig, each)
    if not equal_volts(each):
        faults.append(f"which stand at {pair_volts(each)}: the higher one feeds the other backwards")
    if len({port.thing for port in each.outlets}) > 1:
        faults.append("which are outlets of different supplies")
    if "ac" in {setting.current for setting in each.settings}:
        faults.append("whose windings' phase is not stated: against each other they are a short")
    if common is not None:
        faults.append(f"which share the common '{common}'")
    return faults


CHECK = unfit_parallel_lead
