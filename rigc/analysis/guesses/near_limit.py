"""A result, a limit, and the guesses behind the result -> whether a measurement could carry it over the limit."""

from __future__ import annotations

from rigc.facts.guesses import NEAR_SHARE
from rigc.model.fact import Quantity
from rigc.record import Record


class Guess(Record):
    """A fact that was not measured: of which thing, what it is in words (`the current of 'marl'`)."""

    thing: str
    what: str
    fact: Quantity


class NearLimit(Record):
    """A `value` (of `what`) that guesses drive near a `limit`, both in `unit`."""

    guess: Guess
    what: str
    value: float
    limit: float
    unit: str


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
