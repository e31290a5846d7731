"""Two foot switches of one unit or of two, or a switch and a knob, are too near for a shoe, or a treadle touches what stands beside it.

Why it matters: one stamp switches two units, or turns a knob; a treadle that touches can't travel all the way.
What to do: move one of them by the figure that is told; a row behind may also be raised. What is needed follows the rig's
class: {foot.SWITCH_SPACING_MM[home][0]} beside and {foot.SWITCH_SPACING_MM[home][1]} between rows at home and in a studio, {foot.SWITCH_SPACING_MM[gigging][0].value} and {foot.SWITCH_SPACING_MM[gigging][1].value} for gigs and flights, {foot.SWITCH_SPACING_MM[touring][0].value} and {foot.SWITCH_SPACING_MM[touring][1].value} on tour. Within one unit
its maker has settled it, and it is only remarked.
Source: common practice, no source; geometry on stated places.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import hypot

from rigc.analysis.deck.body_clash import BodyClash
from rigc.analysis.deck.foot_spots import FootSpot, foot_spots, worked_by_hand
from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.facts.foot import KNOB_MM, SWITCH_SPACING_MM
from rigc.model.geometry.neighbours import neighbours
from rigc.model.geometry.polygon import gap
from rigc.model.rig import Rig

KIND = Kind(
    "switches-too-near",
    Level.WARNING,
    __doc__,
    f"switches: as far apart in x, or in y, as the class asks; knob to switch at least {KNOB_MM}; a treadle touches nothing",
    "common practice, no source; geometry on stated places",
)
_HAIR_MM = 1e-6
_STAMPED = ("true", "buffered", "trails")


def switches_too_near(rig: Rig, placement: Placement, clash: BodyClash, finder: PlaceFinder) -> Iterator[Diagnostic]:
    """One finding for each two units of which switches are too near, each unit whose own are, each with a knob too near, each treadle that
    touches; can't-checks for units that must have switches and state none."""
    switches, knobs = foot_spots(rig, placement)
    found = (*_too_near(rig, switches, clash), *_knobs(rig, switches, knobs, clash), *_touching(rig, placement, clash))
    for each in found:
        things = tuple(name for name in each.subject[:2] if name in rig.places)
        yield finder.moving(each, *things) if len(things) > 1 else each
    yield from _unknown(rig, placement)


def _too_near(rig: Rig, switches: tuple[FootSpot, ...], clash: BodyClash) -> Iterator[Diagnostic]:
    beside, rows = (fact.value for fact in SWITCH_SPACING_MM[rig.head.rig_class or "home"])
    near: dict[tuple[str, str], list[tuple[float, float]]] = {}
    for one, other in combinations(sorted(switches, key=lambda each: (each.deck or "", each.x_mm)), 2):
        across, along = other.x_mm - one.x_mm, abs(other.y_mm - one.y_mm)
        if one.deck != other.deck or clash.between(one.thing, other.thing):
            continue
        if across < beside - _HAIR_MM and along < rows - _HAIR_MM:
            near.setdefault((one.thing, other.thing), []).append((across, along))
    for (one_name, other_name), found in near.items():
        across, along = min(found)
        if one_name == other_name:
            yield _own(rig, one_name, found)
            continue
        yield KIND.at(
            rig.places[other_name].span,
            f"the switches of '{one_name}' and '{other_name}' are {short(across)} mm apart in x and {short(along)} mm in y; "
            f"a {rig.head.rig_class or 'home'} rig needs {beside:g} or {rows:g} mm",
            subject=(other_name, one_name),
            label=f"'{other_name}' stands here",
            also=(Label(rig.places[one_name].span, f"'{one_name}' stands here"),),
            numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
        )


def _own(rig: Rig, name: str, found: list[tuple[float, float]]) -> Diagnostic:
    """Switches of one unit, which no place mends: a remark, for its maker settled it and many a sound unit of two switches is built so."""
    beside, rows = (fact.value for fact in SWITCH_SPACING_MM[rig.head.rig_class or "home"])
    across, along = min(found)
    more = f" ({len(found)} pairs of them are too near)" if len(found) > 1 else ""
    return KIND.at(
        rig.places[name].span,
        f"two switches of '{name}' are {short(across)} mm apart in x and {short(along)} mm in y{more}; "
        f"a {rig.head.rig_class or 'home'} rig needs {beside:g} or {rows:g} mm",
        subject=(name,),
        label="stands here",
        level=Level.REMARK,
        numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
        help=f"no place on the board mends that: give what is stamped on to another switch, take a unit with wider spacing, or "
        f"say why it will do (`accept switches-too-near on {name}`); say `worked by hand` in its block if no foot works it",
    )


def _knobs(
    rig: Rig, switches: tuple[FootSpot, ...], knobs: tuple[FootSpot, ...], clash: BodyClash
) -> Iterator[Diagnostic]:
    least = KNOB_MM.value
    for knob in knobs:
        near = [
            (hypot(knob.x_mm - switch.x_mm, knob.y_mm - switch.y_mm), switch)
            for switch in switches
            if switch.deck == knob.deck
        ]
        far, switch = min(near, key=lambda each: each[0], default=(least, None))
        if switch is None or far >= least - _HAIR_MM or clash.between(knob.thing, switch.thing):
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
            help="put a guard over the knob" if own else "",
        )


def _touching(rig: Rig, placement: Placement, clash: BodyClash) -> Iterator[Diagnostic]:
    """A treadle's outline is that of its full travel: what touches it stops it. (What overlaps it is bodies-overlap.)"""
    standing = [body for body in placement.outlines.values() if not body.under]
    for first, second in neighbours([body.area for body in standing], 1.0):
        one, other = standing[first], standing[second]
        if (
            one.deck != other.deck
            or clash.between(one.thing, other.thing)
            or gap(one.corners, other.corners) > _HAIR_MM
        ):
            continue
        for treadle, body in ((one, other), (other, one)):
            unit = rig.units.get(treadle.thing)
            if unit is not None and unit.treadle_mm is not None:
                yield KIND.at(
                    rig.places[treadle.thing].span,
                    f"the treadle of '{treadle.thing}' touches '{body.thing}' at full travel",
                    subject=(treadle.thing, body.thing),
                    label="stands here",
                )


def _unknown(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """Units on top that are switched by foot: switchers, and what has a bypass and no treadle."""
    for body in placement.outlines.values():
        unit = rig.units.get(body.thing)
        if body.under or unit is None or unit.switches or worked_by_hand(unit) or unit.treadle_mm is not None:
            continue
        if unit.loops or (unit.bypass is not None and unit.bypass.value in _STAMPED):
            yield KIND.cant_check(
                rig.places[body.thing].span,
                f"whether the switches of '{unit.name}' have room is not known: where they are is not stated",
                subject=(unit.name,),
                help=f"measure each and write `switch at X, Y mm` in the block of '{unit.name}'",
            )


CHECK = switches_too_near
