"""A result, a limit, and the guesses behind the result -> whether a measurement could carry it over the limit."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import hypot, isfinite

from rigc.facts.fact import Fact
from rigc.facts.guesses import NEAR_SHARE
from rigc.model.fact import Quantity
from rigc.record import Record
from rigc.traced.given import Stated
from rigc.traced.revalued import facts_in, place_of, revalued
from rigc.traced.term import Term


def guess_of(each: Stated) -> Guess:
    """From the name under which it came into the number: `gain of marl`, `fen.in (stage)`, `what combo.in takes`."""
    label = each.label.partition(" (")[0]
    if label.startswith("what "):
        owner = label.split()[1]
        words = label.replace(owner, f"'{owner}'", 1)
    elif " of " in label:
        what, _, owner = label.rpartition(" of ")
        words = f"the {what} of '{owner}'"
    else:
        owner, words = label, f"the impedance of '{label}'"
    return Guess(owner.partition(".")[0], words, each.fact)


_HAIR = 1e-9

Spread = Callable[[Stated], tuple[float, float] | None]
"""The least and the most that a guessed fact may come to be; None of one that is not judged."""


class Guess(Record):
    """A fact that was not measured: of which thing, what it is in words (`the current of 'marl'`)."""

    thing: str
    what: str
    fact: Quantity


class NearLimit(Record):
    """A `value` (of `what`) that guesses drive near a `limit`, both in `unit`. `off` is how far the guess may be off, where it
    is by that and not by its nearness that the value counts."""

    guess: Guess
    what: str
    value: float
    limit: float
    unit: str
    off: str = ""


def guessed(fact: Quantity | None, leaflet_too: bool = False) -> bool:
    """Whether a fact is assumed; with `leaflet_too` also whether it stands in a leaflet, which gives typical currents."""
    if fact is None or fact.provenance is None:
        return False
    return fact.provenance.kind == "assumed" or (leaflet_too and fact.provenance.kind == "leaflet")


def near(value: float, limit: float) -> bool:
    """Whether a value lies within 15 % of a limit, on either side."""
    return abs(value - limit) <= NEAR_SHARE.value / 100 * abs(limit) * (1 + 1e-9)


def driven(value: float, limit: float, part: float) -> bool:
    """Whether guesses that make up `part` of a near value could carry it over the limit: it is not nearer than they are large."""
    return near(value, limit) and part * (1 + 1e-9) >= abs(limit - value)


def nearest(value: float, limits: tuple[float, ...]) -> float:
    """The limit that lies nearest to a value."""
    return min(limits, key=lambda limit: abs(limit - value))


def told_off(spread: Fact) -> str:
    """How far a guess may be off, in words: `30 %`."""
    return f"{spread.value:g} {spread.unit}"


def by_share(share: Fact) -> Spread:
    """A guess that may be off by so many percent of itself, either way."""
    return lambda each: (each.given * (1 - share.value / 100), each.given * (1 + share.value / 100))


def by_amount(amount: Fact) -> Spread:
    """A guess that may be off by so much, either way."""
    return lambda each: (each.given - amount.value, each.given + amount.value)


def carried(value: Term, limit: float, spread: Spread) -> list[Stated]:
    """The guesses behind a number that could carry it over a limit together, from either side; none where they can't. Each is
    moved by itself: guesses are not all off the same way, so what they do is added by its squares."""
    if not isfinite(value):
        return []
    down, up = [0.0], [0.0]
    found = []
    for place, each in facts_in(value).items():
        ends = spread(each) if guessed(each.fact) else None
        if ends is None:
            continue
        moved = [revalued(value, {place: end}) - float(value) for end in ends]
        if max(map(abs, moved)) > _HAIR:
            down.append(min(0.0, *moved))
            up.append(max(0.0, *moved))
            found.append(each)
    hair = _HAIR * max(1.0, abs(limit))
    return found if value - together(down) - hair <= limit <= value + together(up) + hair else []


def together(moved: Iterable[float]) -> float:
    """By how much independent guesses that move a result by so much each may move it together."""
    return hypot(*moved)


def nearest_of_each(found: Iterable[NearLimit]) -> list[NearLimit]:
    """Of the results that one guess drives, the one that is nearest to its limit, as a share of that."""
    best: dict[tuple[str, int, int], NearLimit] = {}
    for each in found:
        place = place_of(each.guess.fact.span)
        if place not in best or _share(each) < _share(best[place]):
            best[place] = each
    return list(best.values())


def _share(each: NearLimit) -> float:
    return abs(each.value - each.limit) / (abs(each.limit) or 1.0)
