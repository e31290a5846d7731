"""Fact: a value the source states, with what was typed, where, how it is known, and what it may be off by."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Any, Generic, TypeVar

from rigc.model.units.measures import Measure
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

    `typed` is what the user wrote of it, with the sign that is printed: `± 10 %`, `± 0.5 H`, `from 40 to 60 mA`.
    """

    least: float
    most: float
    typed: str


class Fact(Record, Generic[T]):
    """A stated value. `value` is in the unit that the holding field's name tells, `typed` is what the user wrote, spread and all.

    Of a range (`from 40 to 60 mA`) the value is the middle, and `typed` says so: `50 mA (from 40 to 60 mA)`.
    `measure` tells what kind of quantity it is; None of what is none, or was not read from a number.
    """

    value: T
    typed: str
    span: Span
    provenance: Provenance | None = None
    spread: Spread | None = None
    measure: Measure | None = None

    @property
    def assumed(self) -> bool:
        """Whether the source says that it was not measured and not read anywhere."""
        return self.provenance is not None and self.provenance.kind == "assumed"


def spread_of(fact: Fact[float]) -> Spread | None:
    """From where to where a fact may lie: as stated; of one that states none and was not measured, by the kind of its quantity."""
    if fact.spread is not None or fact.provenance is None or fact.measure is None:
        return fact.spread
    guess = {"assumed": fact.measure.guess, "leaflet": fact.measure.leaflet}.get(fact.provenance.kind)
    if guess is None:
        return None
    share = guess.unit == "%" and fact.measure.unit != "%"
    off = abs(fact.value) * guess.value / 100 if share else guess.value
    least = max(fact.value - off, min(fact.measure.low, 0.0))
    return Spread(least, min(fact.value + off, fact.measure.high), f"± {guess.value:g} {guess.unit}")


Quantity = Fact[float]
Choice = Fact[str]


def facts_within(value: Any, *left_out: type[Record]) -> tuple[Fact[Any], ...]:
    """Every fact within a record, a tuple or a dict, in its order; each record is looked through once, those of the kinds left out never."""
    found: list[Fact[Any]] = []
    _gather((value,), left_out, set(), found)
    return tuple(found)


def _gather(values: Iterable[Any], left_out: tuple[type[Record], ...], seen: set[int], found: list[Fact[Any]]) -> None:
    for each in values:
        sort = None if each is None else _sort(type(each))  # type: ignore[arg-type]
        if sort is None:
            continue
        if sort is Fact:
            found.append(each)
        elif sort is not Record:
            _gather(each.values() if sort is dict else each, left_out, seen, found)
        elif id(each) not in seen and not isinstance(each, left_out):
            seen.add(id(each))
            _gather([getattr(each, name) for name in each.FIELDS], left_out, seen, found)


@cache
def _sort(kind: type[Any]) -> type[Any] | None:
    """As what values of a class are looked through; None of what can hold no fact."""
    return next((each for each in (Fact, Record, tuple, dict) if issubclass(kind, each)), None)
