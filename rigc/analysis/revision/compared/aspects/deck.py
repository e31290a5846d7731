"""Decks: their plate, rails, holes and drop lines; and cases."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, FACTS, REDRILL, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, knowledge, paper_aspects
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.deck import Deck, Rail
from rigc.model.rig import Rig

_TOLD_BELOW = ("rails", "drops_mm", "holes", "bare_metal", "insulating")


def deck(rig: Rig) -> Iterator[Aspect]:
    """What is measured of a deck is a fact; a hole and a drop line are work. Decks of the stock in which nothing stands are left out."""
    used = {place.deck for place in rig.places.values()} | {None if rig.deck is None else rig.deck.name}
    for each in rig.decks.values():
        if each.name in used or not each.declared.source.name.startswith("stock/"):
            yield from _deck(each)
    for case in rig.cases.values():
        yield Aspect("case", case.name, "", case.title or "case", True, DESIGN, (REDRILL,), case.declared)
        yield from fact_aspects("case", case)
        yield knowledge("case", case)
        yield from paper_aspects("case", case)


def _deck(deck: Deck) -> Iterator[Aspect]:
    yield Aspect("deck", deck.name, "", deck.title or "deck", True, DESIGN, (REDRILL,), deck.declared)
    yield from fact_aspects("deck", deck, _TOLD_BELOW)
    yield knowledge("deck", deck)
    yield from paper_aspects("deck", deck)
    if deck.bare_metal:
        yield Aspect("deck", deck.name, "surface", "bare metal", True, FACTS, span=deck.declared)
    if deck.insulating:
        yield Aspect("deck", deck.name, "surface", "insulating", False, FACTS, span=deck.declared)
    drops = ", ".join(f"{drop:g}" for drop in deck.drops_mm)
    text = f"{drops} mm" if drops else "none"
    yield Aspect("deck", deck.name, "drop lines", text, deck.drops_mm, DESIGN, (REDRILL,), deck.declared)
    for rail in deck.rails:
        yield Aspect(
            "deck", deck.name, f"rail at {rail.front_mm:g} mm", _rail(rail), exact(rail), FACTS, span=rail.span
        )
    for hole in deck.holes:
        name = f"{deck.name} at {hole.x_mm:g}, {hole.y_mm:g} mm"
        yield Aspect("hole", name, "", hole.told, exact(hole), DESIGN, (REDRILL,), hole.span)


def _rail(rail: Rail) -> str:
    tape = "no tape" if rail.tape_front_mm is None else f"tape {rail.tape_front_mm:g} to {words(rail.tape_rear_mm)} mm"
    tape += f" of {rail.strip}" if rail.strip is not None else ""
    tape += " on both faces" if rail.both_faces else ""
    return f"to {rail.rear_mm:g} mm, {tape}"


ASPECTS = deck
