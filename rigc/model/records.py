"""What the source keeps for the crew and for the next revision: tests, spares, as-built facts, field notes, accepted findings."""

from __future__ import annotations

from rigc.model.fact import Quantity
from rigc.record import Record
from rigc.source import Span


class Expected(Record):
    """The reading that a test (by its number) shall give at a point."""

    test: int
    point: str
    reading: Quantity
    span: Span


class Reading(Record):
    """A reading that was taken."""

    date: str
    test: int
    point: str
    reading: Quantity
    by: str
    span: Span


class Spare(Record):
    """Spares carried: a lead of a signal and length in mm, a plug kind, or a thing in words."""

    count: int
    what: str
    length_mm: Quantity | None
    bag: str
    span: Span


class BuiltLead(Record):
    """A lead as measured on the built board, in mm."""

    mark: str
    length_mm: Quantity
    plugs: tuple[str, str] | None
    date: str
    by: str
    span: Span


class AsBuilt(Record):
    """What differs from the design on the board that was built: leads, swaps (out, in, field note), changes that are done."""

    revision: str
    leads: tuple[BuiltLead, ...]
    swaps: tuple[tuple[str, str, int | None], ...]
    done: tuple[int, ...]
    span: Span


class FieldNote(Record):
    """A change made on the road."""

    number: int
    date: str
    text: str
    by: str
    folded: bool
    span: Span


class Accept(Record):
    """A finding that the builder accepts: rule, what it is about (None: anything), why, who, until when (ISO date)."""

    rule: str
    target: str | None
    reason: str
    by: str
    until: str
    span: Span
    rule_span: Span


class Change(Record):
    """A change of this revision; `cause` is design, facts, stock or rules."""

    number: int
    cause: str
    text: str
    because: str
    span: Span


class Limit(Record):
    """A limit that this rig sets for itself, in the unit that its name implies; `source` says where it comes from."""

    name: str
    amount: Quantity
    source: str
    span: Span
