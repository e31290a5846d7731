"""Both rigs -> what differs in decks, holes, panel jacks, cases, mains selectors and ground lifts, as far as a hand has to do with it."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.ground.lift_positions import lift_positions
from rigc.analysis.revision.plan.plan_records import FittingPlan
from rigc.facts.rework import SAME_DECK_MM
from rigc.model.deck import Case, Deck, Hole
from rigc.model.rig import Rig
from rigc.model.things import PanelJack

_SAME_MM = 0.05


def fitting_plans(old: Rig, new: Rig) -> tuple[FittingPlan, ...]:
    """Decks first, then holes, panel jacks, selectors and transformers, lifts, cases."""
    decks = _decks(old, new)
    fresh = {plan.name for plan in decks if plan.after}
    return (
        *decks,
        *_holes(old, new, fresh),
        *_jacks(old, new, fresh),
        *_mains(old, new),
        *_lifts(old, new),
        *_cases(old, new),
    )


def exchanged_decks(plans: tuple[FittingPlan, ...]) -> frozenset[str]:
    """Decks that stay in name only: all that stands on them comes off one board and goes onto another."""
    return frozenset(plan.name for plan in plans if plan.kind == "deck" and plan.before and plan.after)


def _decks(old: Rig, new: Rig) -> list[FittingPlan]:
    before, after = _used(old), _used(new)
    plans = [FittingPlan("deck", name, _deck(before, name), _deck(after, name)) for name in {**after, **before}]
    return [
        plan for plan in plans if not (plan.before and plan.after) or _is_other(before[plan.name], after[plan.name])
    ]


def _used(rig: Rig) -> dict[str, Deck]:
    """The decks on which something stands."""
    names = {place.deck or (rig.deck and rig.deck.name) for place in rig.places.values()}
    return {name: deck for name, deck in rig.decks.items() if name in names}


def _deck(decks: dict[str, Deck], name: str) -> str:
    deck = decks.get(name)
    if deck is None:
        return ""
    if deck.width_mm is None or deck.depth_mm is None:
        return "size not stated"
    return f"{deck.width_mm.value:g} x {deck.depth_mm.value:g}"


def _is_other(one: Deck, other: Deck) -> bool:
    """Of another size by more than a tape errs, with other rails or tiers, or of metal where it was not."""
    for was, now in ((one.width_mm, other.width_mm), (one.depth_mm, other.depth_mm)):
        if was is not None and now is not None and abs(was.value - now.value) > SAME_DECK_MM.value:
            return True
    rails = [[(rail.front_mm, rail.rear_mm) for rail in deck.rails] for deck in (one, other)]
    return (rails[0], one.tiers, one.bare_metal) != (rails[1], other.tiers, other.bare_metal)


def _holes(old: Rig, new: Rig, fresh: set[str]) -> Iterator[FittingPlan]:
    """On a deck that comes all holes are to be drilled; a hole that is no longer wanted is closed."""
    for name, deck in new.decks.items():
        before = () if name in fresh or name not in old.decks else old.decks[name].holes
        there, here = ({_drilled(hole) for hole in holes} for holes in (before, deck.holes))
        for hole in deck.holes:
            if _drilled(hole) not in there:
                yield FittingPlan("hole", hole.told, "", _at(hole), name, beforehand=name in fresh)
        for hole in before:
            if _drilled(hole) not in here:
                yield FittingPlan("hole", hole.told, _at(hole), "", name)


def _drilled(hole: Hole) -> tuple[float, float, float]:
    return hole.diameter_mm, hole.x_mm, hole.y_mm


def _at(hole: Hole) -> str:
    return f"{hole.x_mm:g}, {hole.y_mm:g} mm"


def _jacks(old: Rig, new: Rig, fresh: set[str]) -> Iterator[FittingPlan]:
    """Jacks and inlets of panels by name; on a deck that comes each is set anew."""
    for name in {**new.panels, **old.panels}:
        was, now = old.panels.get(name), new.panels.get(name)
        before = {} if was is None else {jack.name: jack for jack in was.jacks}
        after = {} if now is None else {jack.name: jack for jack in now.jacks}
        deck = "" if now is None else now.deck or ("" if new.deck is None else new.deck.name)
        for jack in {**after, **before}:
            here, there = before.get(jack), after.get(jack)
            if here is None or there is None or deck in fresh or _differs(here, there):
                mains = "inlet" in {each.role for each in (here, there) if each is not None}
                yield FittingPlan("jack", f"{name}.{jack}", _seat(here), _seat(there), name, mains, deck in fresh)


def _differs(one: PanelJack, other: PanelJack) -> bool:
    moved = max(abs(one.x_mm - other.x_mm), abs(one.y_mm - other.y_mm)) > _SAME_MM
    return moved or (one.role, one.connector, one.bushing) != (other.role, other.connector, other.bushing)


def _seat(jack: PanelJack | None) -> str:
    if jack is None:
        return ""
    return f"{jack.connector} at {jack.x_mm:g}, {jack.y_mm:g} mm"


def _mains(old: Rig, new: Rig) -> Iterator[FittingPlan]:
    """Selectors that are set otherwise in a scenario that both have; transformers that are carried anew or no longer."""
    for name, now in new.scenarios.items():
        was = old.scenarios.get(name)
        before = {} if was is None else dict(was.selectors)
        for supply, volts in now.selectors:
            if supply in before and before[supply].value != volts.value:
                yield FittingPlan("selector", supply, before[supply].typed, volts.typed, name)
    had, have = _transformers(old), _transformers(new)
    for what in dict.fromkeys((*have, *had)):
        if what not in had or what not in have:
            yield FittingPlan("transformer", what, what if what in had else "", what if what in have else "")


def _lifts(old: Rig, new: Rig) -> Iterator[FittingPlan]:
    """Ground lifts that both have and that stand otherwise in a scenario that both have: as it says, else as they leave their maker."""
    for name, now in new.scenarios.items():
        was = old.scenarios.get(name)
        before = {} if was is None else {each.port: each.position for each in lift_positions(old, was)}
        for each in lift_positions(new, now):
            stood = before.get(each.port, each.position)
            if stood != each.position and "unknown" not in (stood, each.position):
                yield FittingPlan("lift", str(each.port), stood, each.position, name)


def _transformers(rig: Rig) -> tuple[str, ...]:
    found = (each for scenario in rig.scenarios.values() for each in scenario.transformers)
    return tuple(dict.fromkeys(f"{p.typed} to {s.typed}, {va.typed}, before {supply}" for supply, p, s, va in found))


def _cases(old: Rig, new: Rig) -> Iterator[FittingPlan]:
    for name in {**new.cases, **old.cases}:
        was, now = old.cases.get(name), new.cases.get(name)
        if was is None or now is None or was.inside_mm != now.inside_mm:
            yield FittingPlan("case", name, _case(was), _case(now))


def _case(case: Case | None) -> str:
    if case is None:
        return ""
    return "inside not stated" if case.inside_mm is None else f"inside {' x '.join(f'{s:g}' for s in case.inside_mm)}"
