"""Switches and knobs of units -> where they are on the decks, in mm; and what is worked by hand and never trodden on."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.deck.spot_on_thing import spot_of
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


def worked_by_hand(thing: Thing) -> bool:
    """Whether the source says so: it needs no room for a foot and may stand behind."""
    return "worked by hand" in thing.flags


class FootSpot(Record):
    """A switch or a knob of a unit on the deck's top, in mm on its deck."""

    thing: str
    name: str
    x_mm: float
    y_mm: float
    deck: str | None


def foot_spots(rig: Rig, placement: Placement) -> tuple[tuple[FootSpot, ...], tuple[FootSpot, ...]]:
    """All switches on which a foot comes down, and all knobs, of the units that stand on top. What is worked by hand has none
    of the former."""
    standing = [body for body in placement.outlines.values() if not body.under and body.thing in rig.units]
    found: list[list[FootSpot]] = [[], []]
    for body in standing:
        unit, place = rig.units[body.thing], rig.places[body.thing]
        switches = () if worked_by_hand(unit) else unit.switches
        for spots, into in zip((switches, unit.knobs), found, strict=True):
            into += [FootSpot(unit.name, s.name, *spot_of(unit, place, s.x_mm, s.y_mm), body.deck) for s in spots]
    return tuple(found[0]), tuple(found[1])
