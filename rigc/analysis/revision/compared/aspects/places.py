"""Places: where each thing stands, how it is turned, on which side and part of which deck, or that it stands off the board."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import COMPUTED, DESIGN, PAPER, REDRILL, Aspect
from rigc.analysis.revision.compared.words import exact
from rigc.model.deck import Place
from rigc.model.rig import Rig


def places(rig: Rig) -> Iterator[Aspect]:
    """One a thing; a place that was chosen is computed."""
    for place in rig.places.values():
        where = (place.x_mm, place.y_mm, place.turned, place.skew_deg, place.under, place.jacks, place.deck, place.tier)
        origin = COMPUTED if place.chosen else DESIGN
        yield Aspect("place", place.thing, "", _words(place), exact(where), origin, (REDRILL,), place.span)
    for off in rig.off_board.values():
        yield Aspect("place", off.thing, "", "off the board", exact("off the board"), DESIGN, (REDRILL,), off.span)
        yield Aspect("place", off.thing, "beside", off.where, exact(off.where), DESIGN, (PAPER,), off.span)


def _words(place: Place) -> str:
    side = "under the deck" if place.under else f"on {place.tier}" if place.tier else ""
    turn = place.turned + place.skew_deg
    turned = f"turned {turn:g}°" if turn else ""
    where = f"{place.x_mm:g}, {place.y_mm:g} mm"
    jacks = f"jacks {place.jacks}" if place.jacks else ""
    return ", ".join(filter(None, (where, turned, side, jacks, f"deck {place.deck}" if place.deck else "")))


ASPECTS = places
