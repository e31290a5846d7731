"""Leads and the label template -> what is printed for each end of each lead, and its markers: `A14.label.a`, `A14.label.b`,
`A14.markers`, `A14.around`."""

from __future__ import annotations

from functools import cached_property, partial

from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, Basis, Figure, figure, known_figure
from rigc.traced.given import mentioned, stated
from rigc.traced.means import found
from rigc.traced.reason import AS_STATED, PRACTICE, STATED
from rigc.traced.term import Unknown
from rigc.traced.units import COUNT, MILLIMETRES

TEMPLATE = "{id} {here} / far {far}"
NEW_LINE = " / "
"""Where a text is broken on its marker."""


class Labels(Record):
    """By lead number the text of its two ends, start first, how many markers it bears, and the diameter in mm `around` which they
    go, of a lead whose cable is in stock.

    `flags` is the last line of both texts, of a lead that must not be taken for a straight one or whose outlet could be set
    otherwise.
    """

    ends: dict[str, tuple[Answer, Answer]]
    markers: dict[str, Figure]
    around: dict[str, AnyFigure]
    flags: dict[str, str] = {}  # noqa: RUF012

    @cached_property
    def texts(self) -> dict[str, tuple[str, str]]:
        """The texts of a lead's two ends, start first, by its number."""
        return {mark: (start.text, end.text) for mark, (start, end) in self.ends.items()}

    def longest(self, mark: str) -> int:
        """The most characters that a marker of that lead must hold: a flag has a line of its own."""
        flag = self.flags.get(mark, "")
        behind = len(NEW_LINE + flag) if flag else 0
        return max(len(flag), *(len(text) - behind for text in self.texts[mark]))


def labels(rig: Rig, leads: Leads) -> Labels:
    """Fills the rig's template, or ours: {id} is the lead's number, {here} this end's jack, {far} the other end's. A flag is
    said whatever the template is."""
    template = rig.head.label or TEMPLATE
    told = mentioned("template", template, rig.head.span if rig.head.label else None)
    return Labels(
        {lead.mark: (_end(template, told, lead, "a"), _end(template, told, lead, "b")) for lead in leads.all},
        {lead.mark: _markers(lead) for lead in leads.all},
        {lead.mark: _around(rig, lead) for lead in leads.all if lead.cable in rig.stock.cables},
        {lead.mark: lead.make.flag for lead in leads.all if lead.make.flag},
    )


def label_text(template: str, mark: str, here: Port, far: Port, flag: str = "") -> str:
    """The text of one end. No name and no mark holds a brace, so the order of the replacements does not matter."""
    text = template.replace("{id}", mark).replace("{here}", str(here)).replace("{far}", str(far))
    return text + (NEW_LINE + flag if flag else "")


def _end(template: str, told: Unknown, lead: Lead, end: str) -> Answer:
    here, far = (lead.start, lead.end) if end == "a" else (lead.end, lead.start)
    flag = lead.make.flag
    return Answer(
        f"{lead.mark}.label.{end}",
        label_text(template, lead.mark, here, far, flag),
        lambda: f"{template} with id = {lead.mark}, here = {here}, far = {far}" + (f", and {flag}" if flag else ""),
        told,
        partial(_joins, lead),
        rule="the rig's label template, or ours, filled for this end",
        source=PRACTICE,
    )


def _markers(lead: Lead) -> Figure:
    ends = len(lead.ends)
    return known_figure(
        f"{lead.mark}.markers",
        found(ends, lambda: f"{ends} ends = {ends}"),
        COUNT,
        partial(_joins, lead),
        rule="each lead bears a marker at each end",
        source=PRACTICE,
    )


def _joins(lead: Lead) -> tuple[Basis, ...]:
    return (mentioned("lead", f"{lead.mark} {lead.start} -> {lead.end}", lead.span),)


def _around(rig: Rig, lead: Lead) -> AnyFigure:
    cable = rig.stock.cables[lead.cable or ""]
    outer = stated(f"the outer diameter of {cable.name}", cable.outer_mm)
    return figure(f"{lead.mark}.around", outer, MILLIMETRES, rule=AS_STATED, source=STATED)


COMPUTE = labels
