"""A lead whose reckoned length differs -> the same, held back where the lead that was made will still do."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.results import Results
from rigc.analysis.revision.comparison import REMOVED, ChangedThing, Difference
from rigc.analysis.revision.previous import Previous
from rigc.diagnostics.figures import millimetres


def with_leads_kept(things: tuple[ChangedThing, ...], previous: Previous, results: Results) -> tuple[ChangedThing, ...]:
    """No lead is made anew because its way became a little shorter: one between the least and the most that the new way
    allows is kept. What was measured on the board that was built counts more than what was reckoned. A lead of other
    cable is made anew anyway."""
    made = {lead.mark: round(10 * lead.length_mm.value) for built in previous.as_built for lead in built.leads}
    lengths = results.get(CableLengths)
    return tuple(_kept(each, made, lengths) if each.kind == "lead" and each.how != REMOVED else each for each in things)


def _kept(thing: ChangedThing, made: dict[str, int], lengths: CableLengths) -> ChangedThing:
    length = lengths.lengths.get(thing.name)
    fields = {each.field: each for each in thing.differences}
    change = fields.get("length")
    if length is None or change is None or "cable" in fields:
        return thing
    has = made.get(thing.was or thing.name, change.exact_before)
    if not isinstance(has, int) or not length.least <= has <= length.most:
        return thing
    window = f"{millimetres(length.least)} to {millimetres(length.most)} mm"
    held = f"the lead that is there, {millimetres(has)} mm, still does: {window}"
    others: tuple[Difference, ...] = tuple(
        each.replace(held=held) if each is change else each for each in thing.differences
    )
    kept: ChangedThing = thing.replace(differences=others)
    return kept
