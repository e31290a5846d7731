"""Rig, leads and a scenario -> where grounds are kept apart on purpose: by transformer, open lift, relay or opto-coupler."""

from __future__ import annotations

from rigc.analysis.ground.ground_conductors import leads_in_use
from rigc.analysis.ground.landing import Landing, landing
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.record import Record


class Break(Record):
    """A jack at which a ground ends: `how` in words, the leads beyond it, and the thing that they come to."""

    port: Port
    how: str
    marks: tuple[str, ...]
    beyond: str


def breaks(rig: Rig, leads: Leads, scenario: Scenario | None) -> tuple[Break, ...]:
    """All of a scenario, in the order of the leads."""
    used = leads_in_use(rig, leads, scenario)
    found = []
    for lead in used:
        for port in (lead.start, lead.end):
            if lead.signal == "audio" and (port.thing in rig.units or port.thing in rig.instruments):
                how = _kept_apart(landing(rig, port, scenario))
            elif lead.signal == "control":
                jack = rig.jack(port)
                how = {"relay": "relay", "opto": "opto-coupler"}.get((jack.contact if jack else None) or "", "")
            else:
                how = ""
            if how:
                found.append(_break(rig, used, lead, port, how))
    return tuple(found)


def _kept_apart(at: Landing) -> str:
    if at.lift == "open":
        return "transformer, lift open" if at.transformer else "lift open"
    if at.isolated:
        return "transformer, shield lifted" if at.pole is None else "transformer"
    return ""


def _break(rig: Rig, used: tuple[Lead, ...], lead: Lead, port: Port, how: str) -> Break:
    """Follows the leads through panel jacks."""
    marks, here = [lead.mark], lead.end if port == lead.start else lead.start
    while here.thing in rig.panels:
        further = next((each for each in used if here in (each.start, each.end) and each.mark not in marks), None)
        if further is None:
            break
        marks.append(further.mark)
        here = further.end if here == further.start else further.start
    return Break(port, how, tuple(marks), here.thing)
