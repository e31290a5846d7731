"""The sums of a class of leads: `audio.leads`, `.finished`, `.cut`, `.premade`, `.supplied`, `.plugs`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.plug_uses import plugs_on_leads
from rigc.analysis.computations.cable_lengths import CableLengths, Total
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.reasons.inputs import derived, placed
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Input, Reason


def lead_total(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Six reasons for each class of lead on the board."""
    plugs = plugs_on_leads(rig, leads)
    for total in lengths.totals.values():
        own = [lead for lead in leads.all if lead.signal == total.signal and not lead.stage]
        yield _count(total, own)
        for field in ("finished", "cut", "premade", "supplied"):
            yield _sum(total, own, lengths, field)
        yield _plugs(total, [(lead, plug) for lead, plug in plugs if lead.signal == total.signal])


def _count(total: Total, own: list[Lead]) -> Reason:
    inputs = tuple(placed(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in own)
    formula = f"{', '.join(lead.mark for lead in own)}: {total.leads}"
    return Reason(
        f"{total.signal}.leads", str(total.leads), "", formula, inputs, "leads that stay on the board", ARITHMETIC
    )


def _sum(total: Total, own: list[Lead], lengths: CableLengths, field: str) -> Reason:
    terms: list[tuple[str, int]] = []
    for lead in own:
        length = lengths.lengths.get(lead.mark)
        one = (
            None
            if length is None
            else {
                "finished": length.finished,
                "cut": length.cut,
                "premade": length.premade,
                "supplied": length.supplied,
            }[field]
        )
        if one is not None:
            terms.append((lead.mark, one))
    value = {
        "finished": total.finished,
        "cut": total.cut,
        "premade": total.premade,
        "supplied": total.supplied,
    }[field]
    inputs: tuple[Input, ...] = tuple(
        derived(f"{mark} {field}", millimetres(each), "mm", f"{mark}.{field}") for mark, each in terms
    )
    shown = millimetres(value) if terms or field in ("finished", "supplied") else "none"
    without = f", without {', '.join(total.unrouted)}" if total.unrouted else ""
    formula = (
        f"{' + '.join(each.value for each in inputs)} = {shown}{without}"
        if terms
        else f"no lead of the class has one{without}"
    )
    rule = f"the sum over the class, of the leads that have a {field} length"
    return Reason(f"{total.signal}.{field}", shown, "mm" if shown != "none" else "", formula, inputs, rule, ARITHMETIC)


def _plugs(total: Total, plugs: list[tuple[Lead, str]]) -> Reason:
    kinds = dict.fromkeys(plug for _, plug in plugs)
    counts = {kind: sum(plug == kind for _, plug in plugs) for kind in kinds}
    value = str(total.plugs)
    formula = f"{' + '.join(f'{count} {kind}' for kind, count in counts.items()) or '0'} = {value}"
    inputs = tuple(
        placed(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in dict.fromkeys(lead for lead, _ in plugs)
    )
    rule = (
        "two a lead; the legs of a Y lead have the one at their outlet in common; soldered and captive ends have none"
    )
    return Reason(f"{total.signal}.plugs", value, "", formula, inputs, rule, ARITHMETIC)


REASONS = lead_total
