"""The sums of a class of leads: `audio.leads`, `.finished`, `.cut`, `.premade`, `.supplied`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths, Total
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.reasons.inputs import derived, placed
from rigc.diagnostics.figures import millimetres
from rigc.traced.reason import ARITHMETIC, Input, Reason


def lead_total(leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Five reasons for each class of lead on the board."""
    for total in lengths.totals.values():
        own = [lead for lead in leads.all if lead.signal == total.signal and not lead.stage]
        yield _count(total, own)
        for field in ("finished", "cut", "premade", "supplied"):
            yield _sum(total, own, lengths, field)


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


REASONS = lead_total
