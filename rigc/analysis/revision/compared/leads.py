"""A lead whose reckoned length differs -> the same, held back where the lead that was made will still do."""

from __future__ import annotations

from rigc.analysis.computations.rework import Rework
from rigc.analysis.results import Results
from rigc.analysis.revision.compared.changed import REMOVED, ChangedThing, Difference
from rigc.analysis.revision.plan.lead_plan import KEEP
from rigc.diagnostics.figures import millimetres


def with_leads_kept(things: tuple[ChangedThing, ...], results: Results) -> tuple[ChangedThing, ...]:
    """No lead is made anew because its way became a little shorter: what the rework keeps at its length is kept. What was
    measured on the board that was built counts more than what was reckoned."""
    rework = results.get(Rework)
    return tuple(_kept(each, rework) if each.kind == "lead" and each.how != REMOVED else each for each in things)


def _kept(thing: ChangedThing, rework: Rework) -> ChangedThing:
    plan = rework.lead(thing.name)
    change = next((each for each in thing.differences if each.field == "length"), None)
    if plan is None or change is None or plan.verdict != KEEP or plan.before is None or plan.plugged:
        return thing
    if plan.before.length is None or plan.least is None or plan.most is None:
        return thing
    window = f"{millimetres(plan.least)} to {millimetres(plan.most)} mm"
    held = f"the lead that is there, {millimetres(plan.before.length)} mm, still does: {window}"
    others: tuple[Difference, ...] = tuple(
        each.replace(held=held) if each is change else each for each in thing.differences
    )
    kept: ChangedThing = thing.replace(differences=others)
    return kept
