"""The volts at a unit's inlet: `marl.volts.least`, `marl.volts.most`; the current in its return: `marl.return`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.lead_drops import LeadDrops
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.power_network import PowerNetwork
from rigc.analysis.reasons.inputs import derived, follows, placed
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.traced.reason import Reason


def inlet_volts(rig: Rig, power: PowerAssignment, drops: LeadDrops, network: PowerNetwork) -> Iterator[Reason]:
    """Three reasons for each inlet that is fed with DC."""
    for inlet in network.inlets:
        outlets = power.taps[inlet.unit].outlets
        span = rig.units[inlet.unit].declared
        given = placed(f"{' and '.join(map(str, outlets))} of '{inlet.unit}'", decimals(inlet.most_v, 2), span, "V")
        yield Reason(
            f"{inlet.unit}.volts.most", decimals(inlet.most_v, 2), "V", "what its outlets give with no unit drawing", (given,),
            "no current, no drop", "physics: Kirchhoff's laws",
        )  # fmt: skip
        mine = [drop for drop in drops.all.values() if drop.outlet in outlets]
        ohms = [
            placed(f"each conductor of {drop.mark}", decimals(drop.one_way_ohm * 1000, 1), span, "mΩ")
            for drop in mine
            if drop.one_way_ohm is not None
        ]
        loads = [
            placed(f"{drop.mark} carries", decimals(drop.ma, 1), span, "mA") for drop in mine if drop.ma is not None
        ]
        least = Reason(
            f"{inlet.unit}.volts.least", decimals(inlet.least_v, 2), "V",
            "nodal analysis of the whole power wiring with its shields and shared returns, every unit drawing what it draws",
            (derived("no load", decimals(inlet.most_v, 2), "V", f"{inlet.unit}.volts.most"), *ohms, *loads),
            "Kirchhoff's current law at each node; the legs of a Y lie together as far as they can; the least of all scenarios",
            "physics: Kirchhoff's laws",
        )  # fmt: skip
        yield least
        yield _return(f"{inlet.unit}.return", network.returned_ma(inlet.unit), least)


def _return(name: str, back: float, volts: Reason) -> Reason:
    return Reason(
        name, decimals(back, 1), "mA", "nodal analysis, as its least volts: the sum over its leads' negative conductors",
        (follows("least volts", volts),),
        "what does not come back here comes back through shields and the leads of others", "physics: Kirchhoff's laws",
    )  # fmt: skip


REASONS = inlet_volts
