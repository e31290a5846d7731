"""What the bench takes of each stock: `mini-coax.pieces`, `.cut`, `.with-waste`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.cut_batches import cut_batches, with_waste_cm
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.reasons.inputs import derived, follows, ours
from rigc.diagnostics.figures import metres_cut, metres_with_waste, millimetres, plain
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Reason


def bench_stock(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Three reasons for each cable that is cut."""
    for cable, batch in cut_batches(rig, leads, lengths):
        if cable is not None:
            yield from _cable(cable, batch)


def _cable(cable: str, batch: list[tuple[Lead, int]]) -> Iterator[Reason]:
    cuts = tuple(derived(f"{lead.mark} cut", millimetres(cut), "mm", f"{lead.mark}.cut") for lead, cut in batch)
    pieces = str(len(batch))
    marks = ", ".join(lead.mark for lead, _ in batch)
    yield Reason(
        f"{cable}.pieces", pieces, "", f"{marks}: {pieces}", cuts, "leads of this cable made at the bench", ARITHMETIC
    )
    total = sum(cut for _, cut in batch)
    value = metres_cut(total)
    formula = f"({' + '.join(each.value for each in cuts)}) / 1000 = {value}"
    cut = Reason(f"{cable}.cut", value, "m", formula, cuts, "the cut lengths together", ARITHMETIC)
    yield cut
    more, waste = metres_with_waste(with_waste_cm(total)), plain(1 + WASTE_SHARE.value)
    formula = f"{value} × {waste} = {plain(round(total / 10_000 * (1 + WASTE_SHARE.value), 6))} → {more}"
    rule = f"the cut length and {plain(100 * WASTE_SHARE.value)} % waste, rounded up to a centimetre"
    yield Reason(
        f"{cable}.with-waste", more, "m", formula, (follows("cut", cut), ours(WASTE_SHARE)), rule, WASTE_SHARE.source
    )


REASONS = bench_stock
