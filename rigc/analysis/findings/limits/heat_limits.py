"""Heat over supplies, and air before vents -> what guesses drive near a limit."""

from __future__ import annotations

from rigc.analysis.deck.air_gaps import hangs_below, vent_gap
from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.findings.near_limit import Guess, NearLimit, guessed, together, told_off
from rigc.facts.foot import VENT_MM, WARM_W
from rigc.facts.guesses import HEAT_SPREAD, SIZE_SPREAD_MM
from rigc.model.rig import Rig
from rigc.model.things import Thing

_HAIR = 1e-9


def heat_near(rig: Rig, placement: Placement) -> list[NearLimit]:
    """The heat of what stands over a supply, in W."""
    found = []
    bodies = tuple(placement.outlines.values())
    for body in bodies:
        thing = rig.things[body.thing]
        fact = thing.warm_w if isinstance(thing, Thing) and not body.under else None
        if fact is None or not guessed(fact) or not any(hangs_below(rig, each, body) for each in bodies):
            continue
        if abs(fact.value - WARM_W.value) <= fact.value * HEAT_SPREAD.value / 100 + _HAIR:
            guess = Guess(body.thing, f"the heat of '{body.thing}'", fact)
            what = f"what '{body.thing}' gives off over a supply"
            found.append(NearLimit(guess, what, fact.value, WARM_W.value, "W", told_off(HEAT_SPREAD)))
    return found


def vents_near(rig: Rig, placement: Placement) -> list[NearLimit]:
    """The air before each side with vents, in mm, where the size of a thing on either side of it is guessed."""
    found = []
    bodies = tuple(placement.outlines.values())
    for body in bodies:
        thing = rig.things[body.thing]
        for side in thing.vents if isinstance(thing, Thing) else ():
            for other in bodies:
                if other is not body and (other.deck, other.under) == (body.deck, body.under):
                    found += _before(rig, body, side, other)
    return found


def _before(rig: Rig, body: Outline, side: str, other: Outline) -> list[NearLimit]:
    thing = rig.things[body.thing]
    gap = vent_gap(thing, rig.places[body.thing], side, other) if isinstance(thing, Thing) else None
    guesses = [guess for each in (body.thing, other.thing) for guess in _sizes(rig, each)]
    things = {guess.thing for guess in guesses}
    if gap is None or abs(gap - VENT_MM.value) > together(SIZE_SPREAD_MM.value for _ in things) + _HAIR:
        return []
    what = f"the air before the {side} vents of '{body.thing}'"
    return [NearLimit(each, what, gap, VENT_MM.value, "mm", told_off(SIZE_SPREAD_MM)) for each in guesses]


def _sizes(rig: Rig, name: str) -> list[Guess]:
    """The body of a thing, whose sizes are one statement."""
    thing = rig.things[name]
    sizes = (thing.width_mm, thing.depth_mm) if isinstance(thing, Thing) else ()
    fact = next((each for each in sizes if guessed(each)), None)
    return [] if fact is None else [Guess(name, f"the size of '{name}'", fact)]
