"""Inputs and what feeds them -> the impedances that guesses drive near ten times."""

from __future__ import annotations

from rigc.analysis.findings.near_limit import NearLimit, by_share, carried, guess_of, nearest_of_each, told_off
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP
from rigc.facts.guesses import IMPEDANCE_SPREAD
from rigc.facts.loading import LEAST_BRIDGING
from rigc.model.rig import Rig
from rigc.traced.means import in_parallel
from rigc.traced.term import Term


def bridging_near(rig: Rig, loading: Loading) -> list[NearLimit]:
    """The inputs of each driven section together, as times the impedance of what feeds them."""
    found = []
    for section in loading.played:
        loads = [each for each in section.loads if not each.wants_pickup and isinstance(each.impedance, Term)]
        units = [rig.units.get(each.port.thing) for each in section.loads]
        headphones = any(unit is not None and "headphones" in unit.flags for unit in units)
        if section.how in (PICKUP, OUTSIDE) or not loads or headphones or not isinstance(section.driver, Term):
            continue
        if section.driver <= 0:
            continue
        times = in_parallel(*(each.impedance for each in loads)) / section.driver
        what = f"the load on '{section.source}'"
        found += [
            NearLimit(
                guess_of(each),
                what,
                float(times),
                LEAST_BRIDGING.value,
                "times its impedance",
                told_off(IMPEDANCE_SPREAD),
            )
            for each in carried(times, LEAST_BRIDGING.value, by_share(IMPEDANCE_SPREAD))
        ]
    return nearest_of_each(found)
