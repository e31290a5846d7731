"""A name -> where it stands in the source, its leads, its place and its figures; a figure -> how it came about."""

from __future__ import annotations

import json
from typing import Any

from rigc.analysis.leads.leads import Leads
from rigc.analysis.reasoning import UnknownValue
from rigc.editor.draft import Draft
from rigc.editor.names import LEAD
from rigc.output.reasons.json import render
from rigc.preview.look import Look


def thing(look: Look, now: Draft, name: str) -> dict[str, Any] | None:
    """What is told of a thing or a lead of the rig that is drawn; its lines are those of now. None where there is none of that name."""
    computed = look.computed
    if computed is None:
        return None
    rig, leads = computed.results.rig, computed.get(Leads)
    lead, one = leads.of(name), rig.things.get(name)
    if lead is None and one is None:
        return None
    place = rig.places.get(name)
    marks = [] if one is None else [each.mark for each in leads.all if name in (each.start.thing, each.end.thing)]
    reasons = computed.reasoning.by_name
    own = [reasons[each] for each in reasons if each.startswith(f"{name}.")]
    return {
        "name": name,
        "title": f"{lead.start} to {lead.end}" if lead is not None else getattr(one, "title", ""),
        "lines": _lines(now, name, LEAD if lead is not None else "thing"),
        "leads": list(dict.fromkeys(marks)),
        "ends": [] if lead is None else list(dict.fromkeys((lead.start.thing, lead.end.thing))),
        "place": None
        if place is None
        else {"x": place.x_mm, "y": place.y_mm, "under": place.under, "chosen": place.chosen},
        "figures": [
            {"name": each.name, "value": each.value, "unit": each.unit, "assumed": computed.reasoning.leans(each)}
            for each in own
        ],
    }


def why(look: Look, name: str) -> dict[str, Any] | None:
    """How a figure came about, as `rigc why --to json` tells it; None where there is none of that name."""
    if look.computed is None:
        return None
    reasoning = look.computed.reasoning
    try:
        reasons = reasoning.of(name)
    except UnknownValue:
        return None
    found: dict[str, Any] = json.loads(render(reasoning, reasons, str))
    return found


def _lines(now: Draft, name: str, family: str) -> list[dict[str, Any]]:
    """Where it is declared and named, each line once, the declaration first."""
    found = sorted(now.names.all((family, name)), key=lambda each: not each.declares)
    spans = {(each.span.source.name, each.span.line): each.span for each in found}
    return [
        {"file": file, "line": line, "text": span.source.line(line).strip()} for (file, line), span in spans.items()
    ]
