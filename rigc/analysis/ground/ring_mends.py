"""A ring and the scenarios in which it stands -> the edits that open it: another position of a ground lift, a shield at one end."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.ground.rings import SHARED, Ring
from rigc.diagnostics.mend import AddTo, Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

_SHIELD = " shield at both ends"


def ring_mends(rig: Rig, ring: Ring, scenarios: Sequence[str]) -> tuple[Mend, ...]:
    """None for a pair, which is silent, nor for a ring of which it is not sure that it is one."""
    if not ring.matters or ring.unsure is not None:
        return ()
    return (*_shields(ring), *(_lifts(rig, ring, scenarios) if ring.kind != SHARED else ()))


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


def _lifts(rig: Rig, ring: Ring, scenarios: Sequence[str]) -> tuple[Mend, ...]:
    """Each closed lift on the ring, opened in all these scenarios."""
    ports = dict.fromkeys(port for link in ring.links for port in (*link.isolators, *link.lifts))
    mends = []
    for port in ports if scenarios else ():
        edits: list[Replace | AddTo] = []
        for name in dict.fromkeys(scenarios):
            stated = dict(rig.scenarios[name].lift_spans).get(str(port))
            edits.append(AddTo("scenario", name, f"lift {port} open") if stated is None else Replace(stated, "open"))
        where = listed(dict.fromkeys(scenarios))
        mends.append(Mend(f"open the ground lift at {port}: `lift {port} open` in scenario {where}", tuple(edits)))
    return tuple(mends)
