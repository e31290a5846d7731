"""What the source keeps for the crew and for the next revision: tests, spares, as-built facts, field notes, accepted findings."""

from __future__ import annotations

from rigc.model.fact import Quantity
from rigc.record import Record
from rigc.source import Span


class Expected(Record):
    """The reading that a test (by its number) shall give at a point, in `unit` (V, ohm, dB, dBu, ms, °C, mA, %, or none)."""

    test: int
    point: str
    reading: Quantity
    unit: str
    span: Span


class Reading(Record):
    """A reading that was taken, in `unit` as for `Expected`. `point` is a thing, its jack or outlet, a lead's number or the rig."""

    date: str
    test: int
    point: str
    reading: Quantity
    unit: str
    by: str
    span: Span


class Spare(Record):
    """Spares carried: a lead of a signal and length in mm, a plug kind, a thing in words, or the `thing` of that name, which is declared."""

    count: int
    what: str
    length_mm: Quantity | None
    bag: str
    span: Span
    thing: str = ""


class BuiltLead(Record):
    """A lead as measured on the built board, in mm."""

    mark: str
    length_mm: Quantity
    plugs: tuple[str, str] | None
    date: str
    by: str
    span: Span


class AsBuilt(Record):
    """What differs from revision `revision` on the board that was built: leads, swaps (out, in, field note), changes that are done."""

    revision: str
    leads: tuple[BuiltLead, ...]
    swaps: tuple[tuple[str, str, int | None], ...]
    done: tuple[int, ...]
    notes: tuple[str, ...]
    span: Span


class FieldNote(Record):
    """A change made on the road. `state` is `folded` (the design has taken it up), `open`, or empty where not said."""

    number: int
    date: str
    text: str
    by: str
    state: str
    span: Span

    def open_at(self, day: str) -> bool:
        """Whether a design of that day (ISO date) has not taken it up: it is stated open, or is newer and not stated folded."""
        return self.state == "open" or (self.state != "folded" and self.date > day)


class Accept(Record):
    """A finding that the builder accepts: rule, what it is about (None: anything), why, who, until when (ISO date); the seal of
    what was signed, empty where there is none, and where it stands."""

    rule: str
    target: str | None
    reason: str
    by: str
    until: str
    span: Span
    rule_span: Span
    seal: str = ""
    seal_span: Span | None = None


class Change(Record):
    """A change of this revision; `cause` is design, facts, stock or rules, `touches` holds names and lead numbers; `gone` are those of its names
    that this revision does not declare, each where it stands: the revision before may."""

    number: int
    cause: str
    text: str
    because: str
    touches: tuple[str, ...]
    span: Span
    gone: tuple[tuple[str, Span], ...] = ()


class Frozen(Record):
    """That a revision was released: when (ISO date), by whom, and the seal over its sources and documents, empty where not said."""

    date: str
    by: str
    seal: str
    span: Span


class Limit(Record):
    """A limit that this rig sets for itself, in the unit that its name implies; `source` says where it comes from."""

    name: str
    amount: Quantity
    source: str
    span: Span
