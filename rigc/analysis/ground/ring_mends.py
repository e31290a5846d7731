"""A ring and the scenarios in which it stands -> the edits that open it: another position of a ground lift, a shield at one end."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.lift_positions import lift_edits, opened_in
from rigc.analysis.ground.rings import SHARED, Ring
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario

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
    """Each closed lift on the ring, opened in all these scenarios together with those that must be open with it there."""
    ports = dict.fromkeys(port for link in ring.links for port in (*link.isolators, *link.lifts))
    where = [rig.scenarios[name] for name in dict.fromkeys(scenarios)]
    return tuple(_opened(opened_in(rig, leads, power, where, port)) for port in ports if where)


def _opened(together: dict[tuple[Port, ...], list[Scenario]]) -> Mend:
    at = dict.fromkeys(port for ports in together for port in ports)
    lines = [
        f"{' and '.join(f'`lift {each} open`' for each in ports)} in scenario{'s' * (len(some) > 1)} {listed([each.name for each in some])}"
        for ports, some in together.items()
    ]
    edits = (edit for ports, some in together.items() for each in some for edit in lift_edits(each, ports, "open"))
    many = "s" * (len(at) > 1)
    return Mend(f"open the ground lift{many} at {' and '.join(map(str, at))}: {', and '.join(lines)}", tuple(edits))
