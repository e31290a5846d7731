"""A vent has too little air before it, or a supply hangs under a unit that gets warm.

Why it matters: what can't shed its heat fails early, and mostly in the middle of a show.
What to do: leave 15 mm before each vent; hang supplies away from warm units.
Source: common practice, no source; geometry on stated places.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.placement import Outline, Placement
from rigc.analysis.deck.vent_gap import vent_gap
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.facts.foot import VENT_MM
from rigc.model.rig import Rig
from rigc.model.things import Thing

KIND = Kind(
    "too-warm",
    Level.WARNING,
    __doc__,
    "at least 15 mm before the side with vents; no supply under a unit that states `warm`",
    "common practice, no source; geometry on stated places",
)
_HAIR_MM = 1e-6


def too_warm(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each vent with too little air, and for each supply under a warm unit."""
    bodies = tuple(placement.outlines.values())
    for body in bodies:
        thing = rig.things[body.thing]
        if isinstance(thing, Thing):
            for side in thing.vents:
                yield from _closed(rig, body, thing, side, bodies)
            if thing.warm_w is not None and not body.under:
                yield from _above(rig, body, thing.warm_w.value, bodies)


def _closed(rig: Rig, body: Outline, thing: Thing, side: str, bodies: tuple[Outline, ...]) -> Iterator[Diagnostic]:
    others = (each for each in bodies if each is not body and (each.deck, each.under) == (body.deck, body.under))
    near = [(gap, each) for each in others if (gap := vent_gap(thing, rig.places[thing.name], side, each)) is not None]
    gap, other = min(near, key=lambda each: each[0], default=(VENT_MM.value, body))
    if VENT_MM.value - gap > _HAIR_MM:
        yield KIND.at(
            rig.places[thing.name].span,
            f"the vents on the {side} side of '{thing.name}' have {short(gap)} mm of air before '{other.thing}', "
            f"less than {VENT_MM.value:g} mm",
            subject=(thing.name, other.thing, side),
            label="stands here" if not body.under else "hangs here",
            also=(Label(rig.places[other.thing].span, f"'{other.thing}' is here"),),
            numbers=(Number("gap", gap, "mm"), Number("needed", VENT_MM.value, "mm")),
            help=f"move '{other.thing}' {short(VENT_MM.value - gap)} mm away",
        )


def _above(rig: Rig, body: Outline, watts: float, bodies: tuple[Outline, ...]) -> Iterator[Diagnostic]:
    for other in bodies:
        across, along = body.area.overlap(other.area)
        if other.under and other.deck == body.deck and other.thing in rig.supplies and min(across, along) > _HAIR_MM:
            yield KIND.at(
                rig.places[other.thing].span,
                f"'{other.thing}' hangs under '{body.thing}', which gives off {watts:g} W: {short(across)} x {short(along)} mm of it",
                subject=(other.thing, body.thing),
                label="hangs here",
                also=(Label(rig.places[body.thing].span, f"'{body.thing}' stands above"),),
                numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
                help=f"move one of them {short(min(across, along))} mm aside",
            )


CHECK = too_warm
