"""Reason: how one value of a sheet came about; Input: what went into it, and where that is stated."""

from __future__ import annotations

from rigc.model.fact import Provenance
from rigc.record import Record
from rigc.source import Span

ARITHMETIC = "arithmetic on stated values"
STATED = "the source states it"
AS_STATED = "a stated figure stands"
NOT_KNOWN = "not known"
PRACTICE = "common practice, no source"


class Input(Record):
    """What a value was made of: `value` as the source has it or as a sheet prints it, in `unit` (empty where `value` has it).

    `span` is its place in the source. `why` names the reason of a value that was computed itself. `source` is where a
    number of our own comes from.
    """

    name: str
    value: str
    unit: str = ""
    span: Span | None = None
    provenance: Provenance | None = None
    why: str = ""
    source: str = ""

    @property
    def assumed(self) -> bool:
        """Whether the source says of it that it was not measured and not read anywhere."""
        return self.provenance is not None and self.provenance.kind == "assumed"


class Reason(Record):
    """How a value came about. `value` is the text that the sheet prints, `formula` the arithmetic with the numbers filled in.

    `rule` says in words what was reckoned, `source` where the rule comes from.
    """

    name: str
    value: str
    unit: str
    formula: str
    inputs: tuple[Input, ...]
    rule: str
    source: str
