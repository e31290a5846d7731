"""Plugs that were chosen with places -> each with the reason: `tern.in.plug`."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.model.stock import ChosenPlug
from rigc.record import Record
from rigc.traced.figure import Answer
from rigc.traced.given import mentioned


class PlugChoices(Record):
    """One answer for each jack with such a plug, in the order in which they were chosen."""

    all: tuple[Answer, ...]


def plug_choices(rig: Rig, leads: Leads) -> PlugChoices:
    """Those whose jack has a lead."""
    return PlugChoices(tuple(_told(leads, each) for each in rig.chosen_plugs if leads.at(each.port)))


def _told(leads: Leads, plug: ChosenPlug) -> Answer:
    lead = leads.at(plug.port)[0]
    return Answer(
        f"{plug.port}.plug",
        plug.plug,
        f"in place of {plug.instead}, which would be in the way of {plug.spares}",
        mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span),
        rule="of the stock the kind that takes the least room there, where the usual one leaves no place free; no stated plug is changed",
        source="our choice; geometry on reckoned places",
        label=f"plug in {plug.port}",
    )


COMPUTE = plug_choices
