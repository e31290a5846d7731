"""Differences of decks and leads -> the same, held back where tape and trimming err by more than that, and where no hand has to do with them."""

from __future__ import annotations

from rigc.analysis.results import Results
from rigc.analysis.revision.compared.aspect import DESIGN, REDRILL, RELABEL
from rigc.analysis.revision.compared.changed import CHANGED, REMOVED, ChangedThing, Difference
from rigc.analysis.revision.plan.leads.plan import KEEP
from rigc.analysis.revision.rework import Rework
from rigc.diagnostics.figures import millimetres
from rigc.facts.rework import SAME_DECK_MM

_SIZES = ("width", "depth")


def with_decks_exchanged(things: tuple[ChangedThing, ...]) -> tuple[ChangedThing, ...]:
    """A deck that is 80 mm wider was not measured wrongly: all that stands on it is moved to another one."""
    return tuple(_exchanged(each) if each.kind == "deck" and each.how == CHANGED else each for each in things)


def _exchanged(thing: ChangedThing) -> ChangedThing:
    if not any(map(_is_other, thing.differences)):
        return thing
    sizes = tuple(
        each.replace(work=(REDRILL,), origin=DESIGN) if each.field in _SIZES else each for each in thing.differences
    )
    told: ChangedThing = thing.replace(differences=sizes)
    return told


def _is_other(each: Difference) -> bool:
    sizes = each.exact_before, each.exact_now
    numbers = [size for size in sizes if isinstance(size, int | float)]
    return each.field in _SIZES and len(numbers) == 2 and abs(numbers[0] - numbers[1]) > SAME_DECK_MM.value


def with_leads_kept(things: tuple[ChangedThing, ...], results: Results) -> tuple[ChangedThing, ...]:
    """No lead is made anew because its way became a little shorter: what the rework keeps at its length is kept. What was
    measured on the board that was built counts more than what was reckoned."""
    rework = results.get(Rework)
    return tuple(_kept(each, rework) if each.kind == "lead" and each.how != REMOVED else each for each in things)


def with_labels_left(things: tuple[ChangedThing, ...]) -> tuple[ChangedThing, ...]:
    """What goes keeps its labels in the bag of what came off, as the rework has it: no lead bears that number now."""
    return tuple(
        each.replace(differences=tuple(map(_left, each.differences)))
        if each.kind in ("lead", "special lead") and each.how == REMOVED
        else each
        for each in things
    )


def _left(each: Difference) -> Difference:
    held: Difference = each.replace(held="it goes with its labels on") if RELABEL in each.work else each
    return held


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
