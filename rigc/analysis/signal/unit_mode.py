"""A unit in a state -> what each of its inputs is to the lead that comes in, and which of its outputs drive what follows."""

from __future__ import annotations

from rigc.model.jacks import AUDIO_IN, Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.audio_state import AudioState
from rigc.model.ways.state_ways import ACTIVE, BLOCKED, BUFFER, CABLE, TRANSFORMER, Switched, nature, ways_inside
from rigc.record import Record

STAGE, BYPASSED, WINDING, TRACK, BRIDGED, DEAD = "stage", "bypassed stage", "winding", "track", "bridged", "dead end"


class Mode(Record):
    """What a unit is to the leads around it.

    `ends` tells for an input what it is there: `stage`, `bypassed stage` (where the source states the impedance that it
    has when off), `winding`, `track` (of a volume treadle), `bridged` (wire with a stated impedance across it), `dead end`,
    `blocked` or `unknown`. `wire` holds the outputs that are joined to it by nothing but wire, `feeds` those that it drives
    through what it ends at; a treadle's wiper stands in both: full up it is wire, and below that it drives.
    """

    ends: dict[Port, tuple[str, ...]]
    wire: dict[Port, tuple[Port, ...]]
    feeds: dict[Port, tuple[tuple[Port, str], ...]]

    @property
    def joined(self) -> set[tuple[Port, Port]]:
        """From which jack to which sound can get, by whatever it is."""
        wire = {(start, end) for start, ends in self.wire.items() for end in ends}
        return wire | {(start, end) for start, ends in self.feeds.items() for end, _ in ends}


def mode_of(rig: Rig, unit: Unit, state: AudioState, wired: frozenset[Port], switched: Switched) -> Mode:
    """Sorts the ways of a unit by what they are."""
    kind = nature(unit, state, switched)
    off = kind in (CABLE, BUFFER)
    ends: dict[Port, dict[str, None]] = {}
    wire: dict[Port, list[Port]] = {}
    feeds: dict[Port, list[tuple[Port, str]]] = {}
    wipers = _wipers(unit)
    for way in ways_inside(rig, unit, state, wired, switched):
        if way.how == CABLE and not _wireless(unit, way.start):
            wire.setdefault(way.start, []).append(way.end)
            if off and _bypassed(unit, way.start):
                ends.setdefault(way.start, {})[BRIDGED] = None
            if way.end.jack not in wipers:
                continue
        end = _end(unit, way.how, way.start)
        ends.setdefault(way.start, {})[BYPASSED if end == STAGE and off and _bypassed(unit, way.start) else end] = None
        if end != BLOCKED:
            how = BYPASSED if end == STAGE and off and _bypassed(unit, way.end) else end
            feeds.setdefault(way.start, []).append((way.end, how))
    for jack in unit.jacks:
        port = Port(unit.name, jack.name)
        if jack.role == AUDIO_IN and port not in ends and port not in wire:
            end = _end(unit, kind, port) if kind != CABLE or _wireless(unit, port) else DEAD
            ends[port] = {BYPASSED if end == STAGE and off and _bypassed(unit, port) else end: None}
    return Mode(
        {port: _one_input(tuple(kinds)) for port, kinds in ends.items()},
        {port: tuple(outs) for port, outs in wire.items()},
        {port: tuple(outs) for port, outs in feeds.items()},
    )


def _one_input(kinds: tuple[str, ...]) -> tuple[str, ...]:
    """What is stated of a jack's impedance holds for all that is behind it: a winding beside a stage is not a second input."""
    return tuple(kind for kind in kinds if kind != WINDING) if {STAGE, BYPASSED} & set(kinds) else kinds


def is_treadle(unit: Unit) -> bool:
    """Whether it is a passive volume treadle: its track stands between input and output."""
    return "passive" in unit.flags and (unit.track_ohm is not None or unit.treadle_mm is not None)


def _end(unit: Unit, how: str, port: Port) -> str:
    """What comes through the air always ends in the receiver."""
    if how != BLOCKED and _wireless(unit, port):
        return STAGE
    return {ACTIVE: STAGE, BUFFER: STAGE, TRANSFORMER: WINDING, CABLE: TRACK}.get(how, how)


def _bypassed(unit: Unit, port: Port) -> bool:
    jack = unit.jack(port.jack)
    return jack is not None and jack.bypassed_ohm is not None


def _wipers(unit: Unit) -> tuple[str, ...]:
    """The outputs of a treadle that its wiper feeds; its other outputs are joined to the input (a tuner's).

    Outputs that a stated path joins straight are not the wiper's. Without paths it is the jack named `out`, or a stereo
    pair; else every output is taken for one.
    """
    if not is_treadle(unit):
        return ()
    outs = [jack.name for jack in unit.jacks if jack.role == "output"]
    if unit.paths:
        straight = {path.end for path in unit.paths if path.how == "straight"}
        return tuple(name for name in outs if name not in straight or len(outs) == 1)
    if "out" in outs:
        return ("out",)
    paired = [name for pair in unit.pairs for name in pair if name in outs]
    return tuple(paired or outs)


def _wireless(unit: Unit, port: Port) -> bool:
    jack = unit.jack(port.jack)
    return jack is not None and jack.connector.kind == "wireless"
