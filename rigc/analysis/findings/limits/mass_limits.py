"""Masses and the hold of strips -> those that guesses drive near a limit."""

from __future__ import annotations

from rigc.analysis.findings.near_limit import Guess, NearLimit, driven, guessed, near, nearest
from rigc.analysis.mounting.mounting_strip import MountingStrip, StrippedUnit
from rigc.analysis.weight.case_loads import CaseLoads, MassLimit
from rigc.analysis.weight.mass import Mass
from rigc.model.deck import Case, Deck
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.things import Panel, Thing


def masses_near(rig: Rig, loads: CaseLoads) -> list[NearLimit]:
    """What each board weighs in its case, against the limit of one lifter and those that are declared."""
    return [near for load in loads.all for near in _load_near(rig, load.mass, loads.limits)] if rig.places else []


def _load_near(rig: Rig, mass: Mass, limits: tuple[MassLimit, ...]) -> list[NearLimit]:
    limit = nearest(mass.known_kg, tuple(each.most_kg for each in limits))
    guesses = [guess for item in (*mass.items, *mass.cases) if (guess := _mass(rig, item.name)) is not None]
    if not driven(mass.known_kg, limit, sum(guess.fact.value for guess in guesses)):
        return []
    what = "the board in its case" if mass.cases else "the board"
    return [NearLimit(guess, f"the mass of {what}", mass.known_kg, limit, "kg") for guess in guesses]


def strips_near(rig: Rig, strips: MountingStrip) -> list[NearLimit]:
    """The engaged area of strip under each thing against the area that holds it."""
    found = []
    for unit in strips.units:
        engaged, needed = unit.engaged_cm2, unit.needed_cm2
        if unit.bridged or unit.fixing is not None or engaged is None or needed is None or not near(engaged, needed):
            continue
        found += [
            NearLimit(guess, f"the strip engaged under '{unit.thing}'", engaged, needed, "cm²")
            for guess in _hold(rig, unit)
        ]
    return found


def _hold(rig: Rig, unit: StrippedUnit) -> list[Guess]:
    pull = rig.stock.strips[unit.strip].pull_kpa
    weighed = _mass(rig, unit.thing)
    found = [] if weighed is None else [weighed]
    return [*found, Guess(unit.strip, f"the pull of '{unit.strip}'", pull)] if pull and guessed(pull) else found


def _mass(rig: Rig, name: str) -> Guess | None:
    thing = rig.things.get(name) or rig.decks.get(name) or rig.cases.get(name) or rig.panels.get(name)
    fact: Quantity | None = thing.mass_kg if isinstance(thing, Thing | Deck | Case | Panel) else None
    return Guess(name, f"the mass of '{name}'", fact) if fact is not None and guessed(fact) else None
