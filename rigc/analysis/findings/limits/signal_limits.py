"""Impedances, treble, cable, levels and latencies, each with its limit."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.findings.limits.judged import Judged
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP
from rigc.analysis.signal.loading.source_network import corner_hz
from rigc.analysis.signal.parallel.parallel import between
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.facts.levels import LEAST_MARGIN_DB, LOW_BY_DB
from rigc.facts.loading import CABLE_LIMIT, LEAST_BRIDGING, TREBLE_CORNER_HZ
from rigc.facts.paths import LATENCY_APART_MS
from rigc.model.rig import Rig
from rigc.traced.given import limit, stated
from rigc.traced.means import in_parallel, worked
from rigc.traced.term import Term


def bridging(rig: Rig, loading: Loading) -> Iterator[Judged]:
    """The inputs of each driven section together, as times the impedance of what feeds them."""
    for section in _driven(loading):
        loads = [each for each in section.loads if not each.wants_pickup and isinstance(each.impedance, Term)]
        units = [rig.units.get(each.port.thing) for each in section.loads]
        headphones = any(unit is not None and "headphones" in unit.flags for unit in units)
        if loads and not headphones:
            times = in_parallel(*(each.impedance for each in loads)) / section.driver
            what = f"the load on '{section.source}', against its impedance,"
            yield Judged(what, times, LEAST_BRIDGING.value, False, "times")


def corners(loading: Loading) -> Iterator[Judged]:
    """The treble corner of each driven section: the impedance that drives it, and the cable that it drives."""
    for section in _driven(loading):
        driver, cable = section.driver, section.known_pf
        if isinstance(driver, Term) and cable > 0:
            corner = worked("1 / (2π × {} × {})", corner_hz, driver, cable, moves="--") / 1000
            what = f"the treble corner behind '{section.source}'"
            yield Judged(what, corner, TREBLE_CORNER_HZ.value / 1000, False, "kHz")


def cables(rig: Rig, loading: Loading) -> Iterator[Judged]:
    """The most cable that each passive instrument drives in any state."""
    for name in rig.instruments:
        mine = [section for section in loading.played if section.from_pickup and section.source.thing == name]
        worst = max(mine, key=lambda section: section.known_pf, default=None)
        most = limit(rig, "capacitance", CABLE_LIMIT)
        if worst is not None:
            yield Judged(f"the cable that '{name}' drives", worst.known_pf, most, True, "pF")


def levels(levels: Levels) -> Iterator[Judged]:
    """What is left to the most that each input takes, and how far it is fed below what drives it fully, in dB."""
    for edge in levels.edges:
        if isinstance(edge.margin, Term):
            yield Judged(f"the margin at '{edge.end}'", edge.margin, LEAST_MARGIN_DB.value, False, "dB")
        if edge.sensitivity is not None and isinstance(edge.low, Term):
            below = stated(f"what {edge.end} wants", edge.sensitivity) - edge.low
            yield Judged(f"what '{edge.end}' lacks to be driven fully", below, LOW_BY_DB.value, True, "dB")


def latencies(paths: ParallelPaths) -> Iterator[Judged]:
    """By how much the legs that make a comb are apart, in ms."""
    for each in paths.all:
        apart = between(leg.latency for leg in each.combing) if len(each.combing) > 1 else None
        if isinstance(apart, Term):
            what = f"the difference between the paths at '{each.at}'"
            yield Judged(what, apart, LATENCY_APART_MS.value, True, "ms")


def _driven(loading: Loading) -> Iterator[Section]:
    for section in loading.played:
        if section.how not in (PICKUP, OUTSIDE) and isinstance(section.driver, Term) and section.driver > 0:
            yield section
