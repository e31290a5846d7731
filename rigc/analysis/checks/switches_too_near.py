"""Two foot switches, or a switch and a knob, are too near for a shoe, or a treadle touches what stands beside it.

Why it matters: one stamp switches two units, or turns a knob; a treadle that touches can't travel all the way.
What to do: move one of them by the figure that is told; a row behind may also be raised. What is needed follows the rig's
class: 70 mm beside and 130 mm between rows at home and in a studio, 90 and 130 for gigs and flights, 100 and 150 on tour.
Source: common practice, no source; geometry on stated places.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import hypot

from rigc.analysis.computations.placement import Outline, Placement
from rigc.analysis.deck.foot_spots import FootSpot, foot_spots
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.facts.foot import KNOB_MM, SWITCH_SPACING_MM
from rigc.model.neighbours import neighbours
from rigc.model.polygon import gap
from rigc.model.rig import Rig

KIND = Kind(
    "switches-too-near",
    Level.WARNING,
    __doc__,
    "switches of two units: as far apart in x, or in y, as the class asks; knob to switch at least 25 mm; a treadle touches nothing",
    "common practice, no source; geometry on stated places",
)
_HAIR_MM = 1e-6
_STAMPED = ("true", "buffered", "trails")


def switches_too_near(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each two units of which switches are too near, each with a knob too near, each treadle that
    touches; can't-checks for units that must have switches and state none."""
    switches, knobs = foot_spots(rig, placement)
    yield from _too_near(rig, switches)
    yield from _knobs(rig, switches, knobs)
    yield from _touching(rig, placement)
    yield from _unknown(rig, placement)


def _too_near(rig: Rig, switches: tuple[FootSpot, ...]) -> Iterator[Diagnostic]:
    beside, rows = (fact.value for fact in SWITCH_SPACING_MM[rig.head.rig_class or "home"])
    worst: dict[tuple[str, str], tuple[float, float]] = {}
    for one, other in combinations(sorted(switches, key=lambda each: (each.deck or "", each.x_mm)), 2):
        across, along = other.x_mm - one.x_mm, abs(other.y_mm - one.y_mm)
        if one.thing == other.thing or one.deck != other.deck:
            continue
        if across < beside - _HAIR_MM and along < rows - _HAIR_MM:
            pair = (one.thing, other.thing)
            worst[pair] = min(worst.get(pair, (across, along)), (across, along))
    for (one_name, other_name), (across, along) in worst.items():
        yield KIND.at(
            rig.places[other_name].span,
            f"the switches of '{one_name}' and '{other_name}' are {short(across)} mm apart in x and {short(along)} mm in y; "
            f"a {rig.head.rig_class or 'home'} rig needs {beside:g} or {rows:g} mm",
            subject=(other_name, one_name),
            label=f"'{other_name}' stands here",
            also=(Label(rig.places[one_name].span, f"'{one_name}' stands here"),),
            numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
            help=f"move '{other_name}' {short(beside - across)} mm to the right, or {short(rows - along)} mm to the rear",
        )


def _knobs(rig: Rig, switches: tuple[FootSpot, ...], knobs: tuple[FootSpot, ...]) -> Iterator[Diagnostic]:
    least = KNOB_MM.value
    for knob in knobs:
        near = [
            (hypot(knob.x_mm - switch.x_mm, knob.y_mm - switch.y_mm), switch)
            for switch in switches
            if switch.deck == knob.deck
        ]
        far, switch = min(near, key=lambda each: each[0], default=(least, None))
        if switch is None or far >= least - _HAIR_MM:
            continue
        named = f"the knob {knob.name!r} of '{knob.thing}'" if knob.name else f"a knob of '{knob.thing}'"
        own = knob.thing == switch.thing
        yield KIND.at(
            rig.places[knob.thing].span,
            f"{named} is {short(far)} mm from {'its' if own else 'the'} switch{'' if own else f' of {switch.thing!r}'}, "
            f"less than {least:g} mm",
            subject=(knob.thing, switch.thing, knob.name),
            label="stands here",
            numbers=(Number("distance", far, "mm"), Number("needed", least, "mm")),
            help="put a guard over the knob" if own else f"move '{knob.thing}' {short(least - far)} mm away",
        )


def _touching(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """A treadle's outline is that of its full travel: what touches it stops it. (What overlaps it is bodies-overlap.)"""
    standing = [body for body in placement.outlines.values() if not body.under]
    for first, second in neighbours([body.area for body in standing], 1.0):
        one, other = standing[first], standing[second]
        if one.deck != other.deck or _overlap(one, other) or gap(one.corners, other.corners) > _HAIR_MM:
            continue
        for treadle, body in ((one, other), (other, one)):
            unit = rig.units.get(treadle.thing)
            if unit is not None and unit.treadle_mm is not None:
                yield KIND.at(
                    rig.places[treadle.thing].span,
                    f"the treadle of '{treadle.thing}' touches '{body.thing}' at full travel",
                    subject=(treadle.thing, body.thing),
                    label="stands here",
                    help=f"leave some room between '{treadle.thing}' and '{body.thing}'",
                )


def _overlap(one: Outline, other: Outline) -> bool:
    across, along = one.area.overlap(other.area)
    return min(across, along) > _HAIR_MM and not (one.askew or other.askew)


def _unknown(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """Units on top that are switched by foot: switchers, and what has a bypass and no treadle."""
    for body in placement.outlines.values():
        unit = rig.units.get(body.thing)
        if body.under or unit is None or unit.switches or unit.treadle_mm is not None:
            continue
        if unit.loops or (unit.bypass is not None and unit.bypass.value in _STAMPED):
            yield KIND.cant_check(
                rig.places[body.thing].span,
                f"whether the switches of '{unit.name}' have room is not known: where they are is not stated",
                subject=(unit.name,),
                help=f"measure each and write `switch at X, Y mm` in the block of '{unit.name}'",
            )


CHECK = switches_too_near
