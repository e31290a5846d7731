"""Masses on a deck -> balances that guesses drive near the feet."""

from __future__ import annotations

from rigc.analysis.deck.feet import feet_of
from rigc.analysis.findings.near_limit import Guess, NearLimit, guessed, together, told_off
from rigc.analysis.weight.mass import Balance, Mass
from rigc.facts.guesses import NEAR_SHARE
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing

_SIDES = ("left", "right", "front", "rear")
_HAIR_MM = 1e-6


def balances_near(rig: Rig, mass: Mass) -> list[NearLimit]:
    """How far inside its feet each deck balances, in mm: a guessed mass m at x moves that by dm · (x − X) / M."""
    return [near for balance in mass.balances for near in _near(rig, mass, balance)]


def _near(rig: Rig, mass: Mass, balance: Balance) -> list[NearLimit]:
    feet = feet_of(rig.decks[balance.deck])
    if feet is None or balance.x_mm is None or balance.y_mm is None or not balance.kg:
        return []
    moves: list[tuple[Guess, float, float]] = []  # by how many mm each guess may move it across and along
    for item in mass.items:
        guess = _guess(rig, item.name) if balance.deck in (item.deck, item.name) else None
        if guess is None or item.x_mm is None or item.y_mm is None:
            continue
        part = guess.fact.value * NEAR_SHARE.value / 100 / balance.kg
        moves.append((guess, part * abs(item.x_mm - balance.x_mm), part * abs(item.y_mm - balance.y_mm)))
    found = []
    for side in _SIDES:
        here = [(guess, across if side in ("left", "right") else along) for guess, across, along in moves]
        room = feet.inside(balance.x_mm, balance.y_mm)[side]
        if here and abs(room) <= together(by for _, by in here) + _HAIR_MM:
            what = f"how far '{balance.deck}' balances inside its {side} feet"
            found += [NearLimit(guess, what, room, 0.0, "mm", told_off(NEAR_SHARE)) for guess, by in here if by]
    return found


def _guess(rig: Rig, name: str) -> Guess | None:
    thing = rig.things.get(name) or rig.decks.get(name)
    fact = thing.mass_kg if isinstance(thing, Thing | Deck) else None
    return Guess(name, f"the mass of '{name}'", fact) if fact is not None and guessed(fact) else None
