"""Leads and the label template -> the text that is printed for each end of each lead."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record

TEMPLATE = "{id} {here} / far {far}"


class Labels(Record):
    """The texts of a lead's two ends, start first, by its number."""

    texts: dict[str, tuple[str, str]]


def labels(rig: Rig, leads: Leads) -> Labels:
    """Fills the rig's template, or ours: {id} is the lead's number, {here} this end's jack, {far} the other end's."""
    template = rig.head.label or TEMPLATE
    return Labels({lead.mark: (_text(template, lead, True), _text(template, lead, False)) for lead in leads.all})


def _text(template: str, lead: Lead, at_start: bool) -> str:
    here, far = (lead.start, lead.end) if at_start else (lead.end, lead.start)
    return label_text(template, lead.mark, here, far)


def label_text(template: str, mark: str, here: Port, far: Port) -> str:
    """The text of one end. No name and no mark holds a brace, so the order of the replacements does not matter."""
    return template.replace("{id}", mark).replace("{here}", str(here)).replace("{far}", str(far))


COMPUTE = labels
