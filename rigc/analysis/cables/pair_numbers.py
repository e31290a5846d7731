"""Stated adaptors and feeds -> the number of every series and parallel lead: those of the source, then the next free Y."""

from __future__ import annotations

from rigc.analysis.cables.lead_make import Via
from rigc.analysis.cables.lead_numbers import mark_parts
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.model.rig import Rig


def adaptors_of(rig: Rig, power: PowerAssignment) -> dict[str, tuple[Via, ...]]:
    """By unit, the adaptors that stand between its inlet and the leads from its outlets."""
    found: dict[str, tuple[Via, ...]] = {}
    for each in rig.lead_wishes.adaptors:
        found[each.unit] = (*found.get(each.unit, ()), Via(each.mark, each.kind))
    number = highest_adaptor(rig)
    for feed in power.feeds:
        kinds = [each.kind for each in found.get(feed.unit, ())]
        if feed.how in ("series", "parallel") and feed.how not in kinds:
            number += 1
            found[feed.unit] = (*found.get(feed.unit, ()), Via(f"Y{number}", feed.how))
    return found


def highest_adaptor(rig: Rig) -> int:
    """The highest number that an adaptor or a Y lead of the source bears or bore (`Y3` is 3); 0 without any."""
    marks = [each.mark for each in rig.lead_wishes.adaptors] + [mark for mark, _ in rig.lead_wishes.retired]
    marks += [lead.mark for lead in rig.lead_wishes.leads]
    parts = [parts for mark in marks if (parts := mark_parts(mark)) is not None]
    return max((int(number) for letter, number, _ in parts if letter == "Y"), default=0)
