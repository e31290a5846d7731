"""Every limit by which a number is judged whose facts may be off -> how it stands to them, and which fact decides."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.findings.limits import mass_limits, power_limits, room_limits, signal_limits
from rigc.analysis.findings.limits.judged import Standing, standings
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
from rigc.model.rig import Rig
from rigc.record import Record


class LimitsInDoubt(Record):
    """How each judged number that rests on facts that may be off stands to its limit: power, room, mass, signal."""

    all: tuple[Standing, ...]

    @property
    def in_doubt(self) -> tuple[Standing, ...]:
        """Those that may be kept and may be broken."""
        return tuple(each for each in self.all if each.in_doubt)


def limits_in_doubt(
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
) -> LimitsInDoubt:
    """Reckons no range before it is asked for."""
    judged = (
        *power_limits.loads(joint, limits),
        *power_limits.totals(totals, limits),
        *power_limits.windows(rig, power),
        *power_limits.drops(drops),
        *room_limits.heights(rig, placement),
        *room_limits.case_heights(rig, placement),
        *room_limits.lengths(rig, leads, lengths),
        *room_limits.heat(rig, placement),
        *room_limits.vents(rig, placement),
        *mass_limits.masses(rig, loads),
        *mass_limits.strips(strips),
        *mass_limits.balances(rig, mass),
        *signal_limits.cables(rig, loading),
        *signal_limits.bridging(rig, loading),
        *signal_limits.corners(loading),
        *signal_limits.levels(levels),
        *signal_limits.latencies(paths),
    )
    return LimitsInDoubt(tuple(standings(judged)))


COMPUTE = limits_in_doubt
