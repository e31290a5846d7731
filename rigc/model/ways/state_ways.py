"""A rig in a state -> its ways of sound: the leads that hold, and what a unit is from jack to jack.

`cable`: nothing but wire (true bypass off, a passive unit). `buffer`: an active stage although the unit is off.
`active`: the unit is on. `transformer`: a winding. `blocked`: no sound passes. `unknown`: a fact is missing.
"""

from __future__ import annotations

from rigc.model.jacks import LoopJacks, Port
from rigc.model.rig import Rig
from rigc.model.seen_rig import changed
from rigc.model.things import Unit
from rigc.model.ways.audio_state import UNPOWERED, AudioState
from rigc.model.ways.inner_ways import Way, bypass_ways, inner_ways, main_inputs, main_outputs
from rigc.model.wishes import Connection
from rigc.record import Record

CABLE, BUFFER, ACTIVE, TRANSFORMER, BLOCKED, UNKNOWN = "cable", "buffer", "active", "transformer", "blocked", "unknown"
Switched = frozenset[tuple[str, int]]
_BUFFERED = ("buffered", "trails")


class InnerWay(Record):
    """A way inside a unit and what it is there."""

    start: Port
    end: Port
    how: str


def leads_in(rig: Rig, state: AudioState) -> tuple[Connection, ...]:
    """The audio connections that hold in a state."""
    return tuple(each for each in rig.connections if each.signal == "audio" and each.when.meets(state.when))


def switched_loops(rig: Rig) -> Switched:
    """The loops that a switcher switches: those of which the source says what they hold. All others stay in."""
    return frozenset((use.switcher, use.number) for use in rig.loops)


def ways_inside(
    rig: Rig, unit: Unit, state: AudioState, wired: frozenset[Port], switched: Switched
) -> tuple[InnerWay, ...]:
    """What a unit is in a state, from jack to jack. `wired` are the ports with a lead, `switched` from `switched_loops`."""
    how = nature(unit, state, switched)
    own = [loop.number for loop in unit.loops if (unit.name, loop.number) in switched]
    if own:
        loops = [loop for loop in unit.loops if loop.number not in own or (unit.name, loop.number) in state.loops]
        ways = inner_ways(rig, with_loops(unit, loops), wired)
    elif how in (ACTIVE, UNKNOWN) or "passive" in unit.flags or not unit.loops:
        ways = inner_ways(rig, unit, wired)
    else:
        ways = bypass_ways(unit)
    if how == CABLE:
        ways = _side_by_side(unit, ways, wired)
    stated = {(path.start, path.end): path.how for path in unit.paths}
    return tuple(InnerWay(a, b, _way(unit, state, how, stated.get((a.jack, b.jack), ""))) for a, b in ways)


def nature(unit: Unit, state: AudioState, switched: Switched) -> str:
    """What a unit is in a state where its source says nothing more of the way.

    A switcher is neither on nor off: its loops are. Amps and desks have their own mains and stay active.
    """
    if unit.kind != "unit":
        return ACTIVE
    if "passive" in unit.flags:
        return CABLE
    bypass = unit.bypass.value if unit.bypass is not None else "unknown"
    if state.kind == UNPOWERED and not (unit.battery is not None and unit.battery.only):
        passes = unit.unpowered.value if unit.unpowered is not None else ""
        return {"passes": CABLE, "mutes": BLOCKED}.get(passes, UNKNOWN)
    if bypass == "always-on":
        return ACTIVE
    if unit.name in state.on and not any(name == unit.name for name, _ in switched):
        return ACTIVE
    if bypass in _BUFFERED:
        return BUFFER
    return CABLE if bypass == "true" else UNKNOWN


def _way(unit: Unit, state: AudioState, nature: str, stated: str) -> str:
    """A winding stays one, on or off. In a unit that can't be bypassed `straight` is wire and `buffer` a stage."""
    if "transformer" in stated:
        return BLOCKED if nature == BLOCKED else TRANSFORMER
    if stated == "straight" and (unit.bypass is None or unit.bypass.value == "always-on"):
        return CABLE
    if stated == "buffer" and state.kind != UNPOWERED and nature in (CABLE, UNKNOWN):
        return BUFFER
    return nature


def with_loops(unit: Unit, loops: list[LoopJacks]) -> Unit:
    """The unit with these loops in; the jacks of those that are out belong to no way."""
    gone = {name for loop in unit.loops if loop not in loops for name in (loop.send, loop.back)}
    made: Unit = changed(unit, loops=tuple(loops), jacks=tuple(jack for jack in unit.jacks if jack.name not in gone))
    return made


def _side_by_side(unit: Unit, ways: list[Way], wired: frozenset[Port]) -> list[Way]:
    """Wire joins left to left and right to right: between two pairs nothing crosses, unless one side alone is fed."""
    if unit.paths or not unit.pairs:
        return ways
    ins = [pair for pair in unit.pairs if all(Port(unit.name, jack) in main_inputs(unit) for jack in pair)]
    outs = [pair for pair in unit.pairs if all(Port(unit.name, jack) in main_outputs(unit) for jack in pair)]
    if len(ins) != 1 or len(outs) != 1 or any(Port(unit.name, jack) not in wired for jack in ins[0]):
        return ways
    crossed = {(ins[0][0], outs[0][1]), (ins[0][1], outs[0][0])}
    return [(a, b) for a, b in ways if (a.jack, b.jack) not in crossed]
