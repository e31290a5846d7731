"""Leads and the label template -> the text that is printed for each end of each lead."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record

TEMPLATE = "{id} {here} / far {far}"
NEW_LINE = " / "
"""Where a text is broken on its marker."""


class Labels(Record):
    """The texts of a lead's two ends, start first, by its number. `flags` is the last line of both, of a lead that must not be
    taken for a straight one or whose outlet could be set otherwise."""

    texts: dict[str, tuple[str, str]]
    flags: dict[str, str] = {}  # noqa: RUF012

    def longest(self, mark: str) -> int:
        """The most characters that a marker of that lead must hold: a flag has a line of its own."""
        flag = self.flags.get(mark, "")
        behind = len(NEW_LINE + flag) if flag else 0
        return max(len(flag), *(len(text) - behind for text in self.texts[mark]))


def labels(rig: Rig, leads: Leads) -> Labels:
    """Fills the rig's template, or ours: {id} is the lead's number, {here} this end's jack, {far} the other end's. A flag is
    said whatever the template is."""
    template = rig.head.label or TEMPLATE
    flags = {lead.mark: lead.make.flag for lead in leads.all if lead.make.flag}
    return Labels({lead.mark: (_text(template, lead, True), _text(template, lead, False)) for lead in leads.all}, flags)


def _text(template: str, lead: Lead, at_start: bool) -> str:
    here, far = (lead.start, lead.end) if at_start else (lead.end, lead.start)
    return label_text(template, lead.mark, here, far, lead.make.flag)


def label_text(template: str, mark: str, here: Port, far: Port, flag: str = "") -> str:
    """The text of one end. No name and no mark holds a brace, so the order of the replacements does not matter."""
    text = template.replace("{id}", mark).replace("{here}", str(here)).replace("{far}", str(far))
    return text + (NEW_LINE + flag if flag else "")


COMPUTE = labels
