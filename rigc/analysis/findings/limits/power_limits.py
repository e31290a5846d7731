"""Loads, totals, voltages and drops, each with its limits."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.findings.limits.judged import Judged
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.power.lead_drops import LeadDrops
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.facts.conductors import DROP_SHARE
from rigc.model.rig import Rig
from rigc.traced.given import stated
from rigc.traced.means import least, total
from rigc.traced.term import number


def loads(joint: JointLoads, limits: LoadLimits) -> Iterator[Judged]:
    """The loads of outlets: the share of their ratings that the rules allow, then all of them."""
    for load in joint.all:
        parallel = load.how == "parallel"
        most = (total if parallel else lambda each: least(*each))([part.limit_ma for part in load.parts])
        share = limits.digital_pct if load.digital else limits.load_pct
        for part in (share / 100, 1.0):
            yield Judged(f"the load of {load}", load.taken, most * part, True, "mA")


def totals(totals: SupplyTotals, limits: LoadLimits) -> Iterator[Judged]:
    """The totals of supplies: the share of their ceilings that the rules allow, then all of them."""
    for each in totals.all:
        if each.ceiling is not None:
            for part in (limits.total_pct / 100, 1.0):
                yield Judged(f"the total of '{each.supply}'", each.taken, each.ceiling * part, True, each.unit)


def windows(rig: Rig, power: PowerAssignment) -> Iterator[Judged]:
    """The voltages of outlets: between the ends of their units' windows."""
    for feed in power.feeds:
        unit, volts = rig.units[feed.unit], number(feed.volts)
        for fact, which in ((unit.accepts_low_v, "lowest"), (unit.accepts_high_v, "highest")):
            if fact is not None:
                end = stated(f"{which} voltage of {unit.name}", fact)
                yield Judged(f"the voltage that feeds '{unit.name}'", volts, end, which == "highest", "V")


def drops(drops: LeadDrops) -> Iterator[Judged]:
    """The drops of leads, in percent of what feeds them."""
    for drop in drops.all.values():
        if drop.percent is not None:
            yield Judged(f"the drop of {drop.mark}", drop.percent, DROP_SHARE.value, True, "%")
