"""A rig's units -> the ways of sound inside them, from jack to jack; where sound enters the rig and where it leaves it."""

from __future__ import annotations

from rigc.model.fact import Quantity
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, LoopJacks, Port
from rigc.model.rig import Rig
from rigc.model.things import Unit

Way = tuple[Port, Port]


def inner_ways(rig: Rig, unit: Unit, wired: frozenset[Port]) -> list[Way]:
    """The ways through a unit with everything on: its stated paths, else every input to every output, by way of its loops.

    A loop takes part if one of its jacks is in `wired`: a switcher's loops one after the other in the order of their
    numbers, a blender's side by side.
    """
    straight = bypass_ways(unit)
    loops = [loop for loop in sorted(unit.loops, key=lambda each: each.number) if _live(unit, loop, wired)]
    if not loops:
        return straight
    if any(blend.unit == unit.name for blend in rig.blends):
        return [*straight, *(way for loop in loops for way in _in_turn(unit, [loop]))]
    around = unit.paths or any(loop.mix == "parallel" for loop in loops)
    return [*(straight if around else []), *_in_turn(unit, loops)]


def bypass_ways(unit: Unit) -> list[Way]:
    """The ways through a unit with all its loops out: its stated paths, else every input to every output."""
    if unit.paths:
        return [(Port(unit.name, path.start), Port(unit.name, path.end)) for path in unit.paths]
    return [(start, end) for start in main_inputs(unit) for end in main_outputs(unit)]


def handed_on(unit: Unit, jack: str) -> bool:
    """Whether an output hands on by wire what comes in, beside outputs that do not: the thru of a DI, the tuner's jack of a
    buffer. What the unit lifts or takes is lifted and taken at the others."""
    return is_wire(unit, jack) and not all(is_wire(unit, port.jack) for port in main_outputs(unit))


def is_wire(unit: Unit, jack: str) -> bool:
    """Whether all stated ways to an output are `straight`."""
    paths = [path for path in unit.paths if path.end == jack]
    return bool(paths) and all(path.how == "straight" for path in paths)


def gain_db(unit: Unit, jack: str) -> Quantity | None:
    """What a unit lifts (below 0: takes) on the way to one of its outputs, as stated; None where nothing is, or by a wire."""
    return None if handed_on(unit, jack) else unit.gain_db


def main_inputs(unit: Unit) -> list[Port]:
    """Its audio inputs that are not the return of a loop."""
    returns = {loop.back for loop in unit.loops}
    return [Port(unit.name, jack.name) for jack in unit.jacks if jack.role == AUDIO_IN and jack.name not in returns]


def main_outputs(unit: Unit) -> list[Port]:
    """Its audio outputs that are not the send of a loop."""
    sends = {loop.send for loop in unit.loops}
    return [Port(unit.name, jack.name) for jack in unit.jacks if jack.role == AUDIO_OUT and jack.name not in sends]


def sources(rig: Rig) -> list[Port]:
    """Where sound enters: the instruments, and panel jacks that no lead feeds."""
    fed = {each.end for each in rig.connections if each.signal == "audio"}
    own = [each.start for each in rig.connections if each.signal == "audio" and each.start.thing in rig.instruments]
    return [*own, *(port for port in _panel_jacks(rig) if port not in fed)]


def sinks(rig: Rig) -> list[Port]:
    """Where sound leaves: the audio inputs of amps and desks, and panel jacks that feed no lead."""
    feeding = {each.start for each in rig.connections if each.signal == "audio"}
    ends = [port for unit in rig.units.values() if unit.ends for port in main_inputs(unit)]
    returns = [Port(unit.name, loop.back) for unit in rig.units.values() if unit.ends for loop in unit.loops]
    return [*ends, *returns, *(port for port in _panel_jacks(rig) if port not in feeding)]


def _in_turn(unit: Unit, loops: list[LoopJacks]) -> list[Way]:
    ways: list[Way] = []
    here = main_inputs(unit)
    for loop in loops:
        ways += [(start, Port(unit.name, loop.send)) for start in here]
        here = [Port(unit.name, loop.back)]
    return [*ways, *((start, end) for start in here for end in main_outputs(unit))]


def _live(unit: Unit, loop: LoopJacks, wired: frozenset[Port]) -> bool:
    return Port(unit.name, loop.send) in wired or Port(unit.name, loop.back) in wired


def _panel_jacks(rig: Rig) -> list[Port]:
    return [Port(panel.name, jack.name) for panel in rig.panels.values() for jack in panel.jacks if jack.audio]
