"""Fact: a value the source states, with what was typed, where, and how it is known."""

from __future__ import annotations

from typing import Generic, TypeVar

from rigc.record import Record
from rigc.source import Span

T = TypeVar("T")


class Provenance(Record):
    """How a fact is known: `measured`, `leaflet` or `assumed`; when (ISO date) and by whom, empty where not said."""

    kind: str
    date: str
    by: str
    span: Span


class Spread(Record):
    """What a fact may be off by, as stated: it lies from `least` to `most`, both in the unit of the fact's value.

    `typed` is what the user wrote of it: `+- 10 %`, `+- 0.5 H`, `from 40 to 60 mA`.
    """

    least: float
    most: float
    typed: str


class Fact(Record, Generic[T]):
    """A stated value. `value` is in the unit that the holding field's name tells, `typed` is what the user wrote, spread and all.

    Of a range (`from 40 to 60 mA`) the value is the middle, and `typed` says so: `50 mA (from 40 to 60 mA)`.
    """

    value: T
    typed: str
    span: Span
    provenance: Provenance | None = None
    spread: Spread | None = None

    @property
    def assumed(self) -> bool:
        """Whether the source says that it was not measured and not read anywhere."""
        return self.provenance is not None and self.provenance.kind == "assumed"


Quantity = Fact[float]
Choice = Fact[str]
