"""What is printed on a lead's ends: `A14.label.a`, `A14.label.b`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.labels import TEMPLATE, Labels
from rigc.analysis.computations.leads import Leads
from rigc.analysis.reasons.inputs import placed
from rigc.model.rig import Rig
from rigc.traced.reason import Reason


def lead_label(rig: Rig, leads: Leads, labels: Labels) -> Iterator[Reason]:
    """Two reasons for each lead."""
    template, span = rig.head.label or TEMPLATE, rig.head.span if rig.head.label else None
    for lead in leads.all:
        for end, text in zip("ab", labels.texts[lead.mark], strict=True):
            here, far = (lead.start, lead.end) if end == "a" else (lead.end, lead.start)
            yield Reason(
                f"{lead.mark}.label.{end}",
                text,
                "",
                f"{template} with id = {lead.mark}, here = {here}, far = {far}"
                + (f", and {lead.make.flag}" if lead.make.flag else ""),
                (
                    placed("template", template, span),
                    placed("lead", f"{lead.mark} {lead.start} -> {lead.end}", lead.span),
                ),
                "the rig's label template, or ours, filled for this end",
                "common practice, no source",
            )


REASONS = lead_label
