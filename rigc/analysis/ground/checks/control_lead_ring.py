"""A control, expression, amp-switching or USB lead, or a MIDI lead whose shield is joined at both ends, closes a ring of grounds.

Why it matters: its return joins two grounds a second time, along another way: the ring picks up hum, and a clock in one
of the units is heard in the other.
What to do: switch by a relay or an opto-coupler, join the shield at one end only, or put a USB isolator in.
Source: physics: a second conductor between joined grounds closes a ring.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.ring_mends import ring_mends
from rigc.analysis.ground.ring_words import in_scenarios, link_words, ring_words
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.where_to_break import where_to_break
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import GroundLink

KIND = Kind(
    "control-lead-ring",
    Level.WARNING,
    __doc__,
    "no MIDI, USB or switching lead closes a ring of grounds",
    "physics: a second conductor between joined grounds",
)

_SWITCHING = ("control", "expression", "midi", "usb")


def control_lead_ring(rig: Rig, grounds: GroundSystems, leads: Leads, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each ring that a control lead closes."""
    rings: dict[Ring, list[str]] = {}
    for state in grounds.states:
        for ring in state.rings:
            if ring.matters and any(link.kind in _SWITCHING for link in ring.links):
                rings.setdefault(ring, []).extend(state.scenarios)
    for ring, names in rings.items():
        link = next(link for link in ring.links if link.kind in _SWITCHING)
        where, subject = in_scenarios(rig, names), (*link.marks, *ring.things)
        if ring.unsure is not None:
            yield KIND.cant_check(
                link.span,
                f"{ring.unsure[0]}; whether {link_words(link)} closes a ring, "
                f"{ring_words(ring)}, can't be checked{where}",
                subject=subject,
                help=ring.unsure[1],
                wants=(ring.unsure[0],),
            )
            continue
        mends = ring_mends(rig, leads, power, ring, names)
        yield KIND.at(
            link.span,
            f"{_told(link)} closes a ring: {ring_words(ring)}{where}",
            subject=subject,
            label="a second way between joined grounds",
            mends=mends,
            help=where_to_break(rig, leads, ring, beside_edits=bool(mends)),
        )


def _told(link: GroundLink) -> str:
    words = link_words(link)
    if link.kind == "usb":
        return f"the USB lead {words}"
    return f"the shield of {words}, joined at both ends," if link.kind == "midi" else words


CHECK = control_lead_ring
