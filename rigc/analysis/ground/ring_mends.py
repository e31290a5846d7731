"""A ring and the scenarios in which it stands -> the edits that open it: another position of a ground lift, a shield at one end."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.lift_positions import lift_edits, opened_together
from rigc.analysis.ground.rings import SHARED, Ring
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.mend import AddTo, Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

_SHIELD = " shield at both ends"


def ring_mends(
    rig: Rig, leads: Leads, power: PowerAssignment, ring: Ring, scenarios: Sequence[str]
) -> tuple[Mend, ...]:
    """None for a pair, which is silent, nor for a ring of which it is not sure that it is one."""
    if not ring.matters or ring.unsure is not None:
        return ()
    return (*_shields(ring), *(_lifts(rig, leads, power, ring, scenarios) if ring.kind != SHARED else ()))


def _shields(ring: Ring) -> tuple[Mend, ...]:
    links = [link for link in ring.links if link.kind == "midi" and link.span is not None]
    return tuple(
        Mend(
            f"join the shield of {' + '.join(link.marks)} at the sending end only",
            (Replace(link.span, link.span.text.replace(_SHIELD, "")),),
        )
        for link in links
        if link.span is not None and _SHIELD in link.span.text
    )


def _lifts(rig: Rig, leads: Leads, power: PowerAssignment, ring: Ring, scenarios: Sequence[str]) -> tuple[Mend, ...]:
    """Each closed lift on the ring, opened in all these scenarios together with those that must be open with it."""
    ports = dict.fromkeys(port for link in ring.links for port in (*link.isolators, *link.lifts))
    mends = []
    for port in ports if scenarios else ():
        edits: list[Replace | AddTo] = []
        together = opened_together(rig, leads, power, rig.scenarios[scenarios[0]], port)
        for name in dict.fromkeys(scenarios):
            edits += lift_edits(rig.scenarios[name], together, "open")
        where = listed(dict.fromkeys(scenarios))
        at, lines = " and ".join(map(str, together)), " and ".join(f"`lift {each} open`" for each in together)
        mends.append(
            Mend(f"open the ground lift{'s' * (len(together) > 1)} at {at}: {lines} in scenario {where}", tuple(edits))
        )
    return tuple(mends)
