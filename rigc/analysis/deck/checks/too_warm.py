"""A vent has too little air before it, or a supply hangs under a unit that gets warm.

Why it matters: what can't shed its heat fails early, and mostly in the middle of a show.
What to do: leave {foot.VENT_MM} before each vent; hang supplies away from warm units. All power that a unit takes becomes heat: of one
that takes {foot.WARM_W} or more, stands over a supply and states no heat, it is asked (`warm 1 W` if its base stays cool).
Source: common practice, no source; geometry on stated places.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.air_gaps import beside_each, gets_warm, hangs_below, taken_w, vent_gap
from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.wording import listed
from rigc.facts.foot import VENT_MM, WARM_W
from rigc.model.rig import Rig
from rigc.model.things import Thing, Unit

KIND = Kind(
    "too-warm",
    Level.WARNING,
    __doc__,
    f"at least {VENT_MM} before the side with vents; no supply under a unit that gives off {WARM_W} or more; what takes so much says its heat",
    "common practice, no source; geometry on stated places",
)
_HAIR_MM = 1e-6


def too_warm(rig: Rig, placement: Placement, power: PowerAssignment, finder: PlaceFinder) -> Iterator[Diagnostic]:
    """One finding for each vent with too little air, and for each supply under a warm unit. What no outlet can feed gives no heat."""
    dark = {name for unfed in power.unfed if unfed.why == "rivals" for name in unfed.units}
    bodies = tuple(placement.outlines.values())
    things = ((body, rig.things[body.thing]) for body in bodies)
    asked = [(body, it) for body, it in things if isinstance(it, Thing) and (it.vents or gets_warm(it))]
    beside = beside_each(bodies, VENT_MM.value) if asked else {}
    for body, thing in asked:
        near = beside[body.thing]
        for side in thing.vents:
            yield from (finder.moving(each, *each.subject[1::-1]) for each in _closed(rig, body, thing, side, near))
        if body.under or not gets_warm(thing):
            continue
        if thing.warm_w is not None:
            yield from (finder.moving(each, *each.subject) for each in _above(rig, body, thing.warm_w.value, near))
        elif isinstance(thing, Unit) and thing.name not in dark:
            yield from _unstated(rig, body, thing, near)


def _closed(rig: Rig, body: Outline, thing: Thing, side: str, near: tuple[Outline, ...]) -> Iterator[Diagnostic]:
    others = (each for each in near if (each.deck, each.under) == (body.deck, body.under))
    gaps = [(gap, each) for each in others if (gap := vent_gap(thing, rig.places[thing.name], side, each)) is not None]
    gap, other = min(gaps, key=lambda each: each[0], default=(VENT_MM.value, body))
    if VENT_MM.value - gap > _HAIR_MM:
        yield KIND.at(
            rig.places[thing.name].span,
            f"the vents on the {side} side of '{thing.name}' have {short(gap)} mm of air before '{other.thing}', "
            f"less than {VENT_MM.value:g} mm",
            subject=(thing.name, other.thing, side),
            label="stands here" if not body.under else "hangs here",
            also=(Label(rig.places[other.thing].span, f"'{other.thing}' is here"),),
            numbers=(Number("gap", gap, "mm"), Number("needed", VENT_MM.value, "mm")),
        )


def _unstated(rig: Rig, body: Outline, unit: Unit, near: tuple[Outline, ...]) -> Iterator[Diagnostic]:
    """A unit that takes much power, over a supply: whether it gets warm is not known."""
    watts = taken_w(unit)
    below = [each.thing for each in near if hangs_below(rig, each, body)]
    if below:
        yield KIND.cant_check(
            unit.declared,
            f"whether '{unit.name}' warms {listed(below)} below it is not known: it takes {short(watts)} W and "
            "states no heat",
            subject=(unit.name, *below),
            help=f"feel its base after an hour of use, and write its heat into the block of '{unit.name}': warm ___ W",
        )


def _above(rig: Rig, body: Outline, watts: float, near: tuple[Outline, ...]) -> Iterator[Diagnostic]:
    for other in near:
        if hangs_below(rig, other, body):
            across, along = body.area.overlap(other.area)
            yield KIND.at(
                rig.places[other.thing].span,
                f"'{other.thing}' hangs under '{body.thing}', which gives off {watts:g} W: {short(across)} x {short(along)} mm of it",
                subject=(other.thing, body.thing),
                label="hangs here",
                also=(Label(rig.places[body.thing].span, f"'{body.thing}' stands above"),),
                numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
            )


CHECK = too_warm
