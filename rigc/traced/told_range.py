"""A figure -> the range in which it lies as a person reads it, the fact that makes most of it first."""

from __future__ import annotations

from rigc.model.fact import Spread, spread_of
from rigc.record import Record
from rigc.traced.figure import Figure, Told
from rigc.traced.given import Stated
from rigc.traced.ranged import Part, Range
from rigc.traced.shown import Shown

_MOST_MORE = 4


class ToldPart(Record):
    """What one fact makes of a range: `by` how much it moves the number (`± 30`, `−20 to +40`), empty where that is not known.

    `ends` is the number with this fact at one end and at the other, in the unit told.
    """

    fact: Stated
    spread: Spread
    by: str
    ends: tuple[float, float] | None


class ToldRange(Record):
    """The `least` and the `most` as texts and in `ends` as numbers, in the unit told; empty and None where facts behind the
    number may be off and it is not known how that moves it. `exact` tells whether it can come to be both.

    `beside` has what may be off and is no number in it, though it decided about it.
    """

    least: str
    most: str
    ends: tuple[float, float] | None
    exact: bool
    parts: tuple[ToldPart, ...]
    beside: tuple[ToldPart, ...]


def told_range(value: Told) -> ToldRange | None:
    """The range of a figure; None where nothing behind it may be off, or it is no known number."""
    if not isinstance(value, Figure):
        return None
    made = Range(value)
    beside = tuple(map(_unmoved, made.beside))
    if made.bounds is None:
        facts = tuple(map(_unmoved, made.facts))
        return ToldRange("", "", None, False, facts, beside) if facts or beside else None
    if not made.parts and not beside:
        return None
    least, most = made.bounds
    more = next((more for more in range(_MOST_MORE) if _apart(value.shown, least, most, more)), _MOST_MORE)
    low, high = (value.shown.told(each, more)[0] for each in made.bounds)
    parts = tuple(_part(value, each, more) for each in made.parts)
    return ToldRange(low, high, _ends(value.shown, made.bounds), made.exact, parts, beside)


def _apart(shown: Shown, least: float, most: float, more: int) -> bool:
    return shown.told(least, more)[0] != shown.told(most, more)[0]


def _part(value: Figure, part: Part, more: int) -> ToldPart:
    less, plus = float(value) - part.ends[0], part.ends[1] - float(value)
    down, up = (value.shown.told(each, more)[0] for each in (less, plus))
    by = f"± {up}" if down == up else f"−{down} to +{up}"
    return ToldPart(part.fact, part.spread, by, _ends(value.shown, part.ends))


def _unmoved(fact: Stated) -> ToldPart:
    spread = spread_of(fact.fact)
    assert spread is not None  # it is told for it may be off
    return ToldPart(fact, spread, "", None)


def _ends(shown: Shown, ends: tuple[float, float]) -> tuple[float, float]:
    least, most = (float(f"{each / shown.size:.9g}") for each in ends)
    return least, most
