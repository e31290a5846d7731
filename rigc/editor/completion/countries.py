"""Where a country goes -> the countries, with what their sockets give."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.editor.completion.offer import Offer
from rigc.editor.completion.spot import Spot
from rigc.facts.countries import CODES, country

_FIRST = ("country", "origin")


def countries(spot: Spot) -> Iterator[Offer]:
    """The codes where the statement is `country`, `origin` or what a radio band is `allowed` in; nothing elsewhere."""
    if not (spot.words[:1] and spot.words[0] in _FIRST and len(spot.words) == 1) and "allowed" not in spot.words:
        return
    for code in CODES.split():
        found = country(code)
        mains = None if found is None else found.first or found.second
        said = "" if mains is None else str(mains)
        if found is not None and found.differ:
            said = f"{found.first}; or {found.second}: two tables differ"
        yield Offer(code, "country", said)
