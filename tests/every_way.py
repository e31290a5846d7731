"""All ways of sound of a rig in a state at once; the program asks unit by unit."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.ways.audio_state import AudioState
from rigc.model.ways.state_ways import InnerWay, leads_in, switched_loops, ways_inside


def every_way(rig: Rig, state: AudioState) -> tuple[InnerWay, ...]:
    """The ways inside all units."""
    wired = frozenset(port for each in leads_in(rig, state) for port in (each.start, each.end))
    switched = switched_loops(rig)
    return tuple(way for unit in rig.units.values() for way in ways_inside(rig, unit, state, wired, switched))
