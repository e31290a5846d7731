"""Rig and its power -> the units and supplies that it uses, as against those that its bench files only declare; and its spares."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.model.rig import Rig
from rigc.model.things import Supply, Unit


def used_supplies(rig: Rig, power: PowerAssignment) -> tuple[Supply, ...]:
    """The supplies that feed something, have a place or stand off the board, in order of declaration."""
    feeding = {port.thing for port in power.loads}
    return tuple(
        supply
        for name, supply in rig.supplies.items()
        if name in feeding or name in rig.places or name in rig.off_board
    )


def used_things(rig: Rig, power: PowerAssignment) -> tuple[Unit | Supply, ...]:
    """The units, amps and desks in use, then the supplies in use."""
    return (*used_units(rig), *used_supplies(rig, power))


def spare_things(rig: Rig, power: PowerAssignment) -> tuple[Unit | Supply, ...]:
    """What the source names among the spares and the rig does not use, in the order in which it names them."""
    used = {thing.name for thing in used_things(rig, power)}
    every: dict[str, Unit | Supply] = {**rig.units, **rig.supplies}
    return tuple(every[spare.thing] for spare in rig.spares if spare.thing in every and spare.thing not in used)
