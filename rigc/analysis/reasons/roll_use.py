"""How strips come off their rolls: `hook.roll`, `.rolls`, `.least-rolls`, `.rolls-left`, where the stock states a roll."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.computations.rail_tape import RailTape
from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.cutting.cutting_plan import CuttingPlan
from rigc.analysis.mounting.roll_use import roll_uses
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, stated
from rigc.diagnostics.figures import metres_cut, millimetres, nearest_tenth
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Reason


def roll_use(rig: Rig, strips: MountingStrip, tape: RailTape, order: StripOrder) -> Iterator[Reason]:
    """Four reasons for each kind of strip that comes on rolls of a stated length."""
    for use in roll_uses(rig, strips, tape, order):
        if use.plan is not None and use.kind.strip is not None:
            yield from _reasons(rig, use.kind.strip, nearest_tenth(use.kind.laid_mm), use.plan)


def _reasons(rig: Rig, strip: str, laid_mm: str, plan: CuttingPlan) -> Iterator[Reason]:
    roll = rig.stock.strips[strip].roll_mm
    metres = metres_cut(plan.length)
    yield as_stated(f"{strip}.roll", f"how long a roll of {strip} is", roll, "m", metres)
    inputs = (stated(f"roll of {strip}", roll), derived("laid", laid_mm, "mm", f"{strip}.sum"))
    count, least, rest = str(len(plan.raws)), str(plan.least), metres_cut(plan.rest)
    told = " | ".join(" + ".join(map(millimetres, raw)) for raw in plan.raws) or "nothing"
    rule = "every piece whole, from as few rolls as will do"
    yield Reason(f"{strip}.rolls", count, "", f"{told}: {count}", inputs, rule, ARITHMETIC)
    rule = "no plan has fewer rolls: what the pieces take at least, rounded up"
    yield Reason(f"{strip}.least-rolls", least, "", f"{plan.bound:.4f} → {least}", inputs, rule, ARITHMETIC)
    laid = metres_cut(sum(map(sum, plan.raws)))
    formula = f"{count} × {metres} − {laid} = {rest}"
    yield Reason(f"{strip}.rolls-left", rest, "m", formula, inputs, "the rolls less what is cut", ARITHMETIC)


REASONS = roll_use
