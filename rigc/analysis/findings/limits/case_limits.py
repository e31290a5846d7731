"""Decks in their cases -> heights that guesses drive near the room there is."""

from __future__ import annotations

from rigc.analysis.deck.case_height import height_in_case
from rigc.analysis.deck.placement import Placement
from rigc.analysis.findings.near_limit import Guess, NearLimit, guessed, together, told_off
from rigc.facts.clearance import LID_FOAM_MM
from rigc.facts.guesses import SIZE_SPREAD_MM
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.model.ways.case_of import cases_for

_HAIR_MM = 1e-6


def case_heights_near(rig: Rig, placement: Placement) -> list[NearLimit]:
    """How high each thing on a deck reaches in the roomiest case, in mm: its height, the deck's clearance and thickness."""
    found = []
    for deck in rig.decks.values():
        insides = [case.inside_mm[2] for case in cases_for(rig, deck.name) if case.inside_mm is not None]
        if not insides:
            continue
        room = max(insides) - LID_FOAM_MM.value
        for body in placement.outlines.values():
            height = height_in_case(rig, deck, body) if body.deck == deck.name and not body.under else None
            guesses = _behind(rig, deck, body.thing)
            if height is None or abs(room - height.top_mm) > together(SIZE_SPREAD_MM.value for _ in guesses) + _HAIR_MM:
                continue
            what = f"the height of '{deck.name}' with '{body.thing}' in the case"
            found += [NearLimit(guess, what, height.top_mm, room, "mm", told_off(SIZE_SPREAD_MM)) for guess in guesses]
    return found


def _behind(rig: Rig, deck: Deck, name: str) -> list[Guess]:
    thing = rig.things[name]
    known = (
        (
            name,
            f"the height of '{name}'",
            thing.height_mm if isinstance(thing, Thing) and not thing.treadle_mm else None,
        ),
        (deck.name, f"the clearance of '{deck.name}'", deck.clearance_mm),
        (deck.name, f"the thickness of '{deck.name}'", deck.thickness_mm),
    )
    return [Guess(owner, what, fact) for owner, what, fact in known if fact is not None and guessed(fact)]
