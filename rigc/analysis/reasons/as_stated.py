"""A stated fact -> its reason: the source says so."""

from __future__ import annotations

from rigc.analysis.reasons.inputs import stated
from rigc.diagnostics.figures import plain
from rigc.model.fact import Quantity
from rigc.traced.reason import NOT_KNOWN, STATED, Reason


def as_stated(name: str, what: str, fact: Quantity | None, unit: str, value: str | None = None) -> Reason:
    """The reason of a figure that a sheet repeats from the source; `value` where the sheet writes it in another way."""
    if fact is None:
        return Reason(
            name, NOT_KNOWN, unit, f"the source does not say {what}", (), "what is not stated is not known", STATED
        )
    shown = plain(fact.value) if value is None else value
    return Reason(
        name, shown, unit, f"{fact.typed}, as stated", (stated(what, fact),), "a stated figure stands", STATED
    )
