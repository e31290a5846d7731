"""A jack that drives leads, in a state -> the leads up to the next inputs, and what each of those is."""

from __future__ import annotations

from rigc.analysis.signal.unit_mode import TRACK, Mode, mode_of
from rigc.model.audio_state import UNPOWERED, AudioState
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.state_ways import leads_in, switched_loops
from rigc.model.wishes import Connection
from rigc.record import Record

PICKUP, OUTSIDE = "pickup", "outside"

_Key = tuple[str, bool, frozenset[tuple[str, int]], bool]


class SectionEnd(Record):
    """An input that a section meets and what it is there (see `Mode`)."""

    port: Port
    what: str


class SectionWalk(Record):
    """A section: the jack that drives it and how, the leads as numbers of `rig.connections`, and the inputs it meets.

    `branch` holds the leads that hang on a treadle's jack beside its wiper.
    """

    source: Port
    how: str
    hops: tuple[int, ...]
    ends: tuple[SectionEnd, ...]
    branch: tuple[tuple[Port, tuple[int, ...]], ...]

    def __hash__(self) -> int:
        return hash((self.source, self.how, self.hops))

    def meets(self, *what: str) -> bool:
        """Whether one of its inputs is of these kinds."""
        return any(end.what in what for end in self.ends)


Feeds = tuple[tuple[Port, str], ...]
"""Jacks that are driven by what ends a section, and how."""


class Walker:
    """Walks sections in one wiring; what a walk met is kept, and serves every state in which that is the same."""

    def __init__(self, rig: Rig, base: AudioState) -> None:
        self.rig = rig
        self.switched = switched_loops(rig)
        self.loops_of: dict[str, frozenset[tuple[str, int]]] = {}
        for pair in self.switched:
            self.loops_of[pair[0]] = self.loops_of.get(pair[0], frozenset()) | {pair}
        numbers = {id(each): at for at, each in enumerate(rig.connections)}
        leads = leads_in(rig, base)
        self.links: dict[Port, list[tuple[int, Connection]]] = {}
        for each in leads:
            self.links.setdefault(each.start, []).append((numbers[id(each)], each))
        self.wired = frozenset(port for each in leads for port in (each.start, each.end))
        self._modes: dict[_Key, Mode] = {}
        self._walks: dict[tuple[Port, str], list[tuple[tuple[_Key, ...], SectionWalk, Feeds]]] = {}

    def mode(self, name: str, state: AudioState) -> Mode:
        """What a unit is in a state."""
        key = self._key(name, state)
        if key not in self._modes:
            self._modes[key] = mode_of(self.rig, self.rig.units[name], state, self.wired, self.switched)
        return self._modes[key]

    def walk(self, source: Port, how: str, state: AudioState) -> tuple[SectionWalk, Feeds]:
        """The section that a jack drives in a state, and what is driven behind it."""
        kept = self._walks.setdefault((source, how), [])
        for keys, walk, feeds in kept:
            if all(self._key(key[0], state) == key for key in keys):
                return walk, feeds
        walk, feeds, met = self._walked(source, how, state)
        kept.append((tuple(self._key(name, state) for name in met), walk, feeds))
        return walk, feeds

    def _key(self, name: str, state: AudioState) -> _Key:
        loops = self.loops_of.get(name)
        return name, name in state.on, loops & state.loops if loops else frozenset(), state.kind == UNPOWERED

    def _walked(self, source: Port, how: str, state: AudioState) -> tuple[SectionWalk, Feeds, tuple[str, ...]]:
        hops: dict[int, None] = {}
        ends: dict[tuple[Port, str], SectionEnd] = {}
        feeds: dict[tuple[Port, str], None] = {}
        branch: dict[Port, list[int]] = {}
        met: dict[str, None] = {}
        todo: list[tuple[int, Connection, Port | None]] = [(*each, None) for each in self.links.get(source, ())]
        while todo:
            at, hop, off_track = todo.pop(0)
            if at in hops:
                continue
            hops[at] = None
            if off_track is not None:
                branch.setdefault(off_track, []).append(at)
            if hop.end.thing not in self.rig.units:
                onward = self.links.get(hop.end, ())
                todo += [(*each, off_track) for each in onward]
                if not onward:
                    ends[hop.end, OUTSIDE] = SectionEnd(hop.end, OUTSIDE)
                continue
            met[hop.end.thing] = None
            mode = self.mode(hop.end.thing, state)
            for what in mode.ends.get(hop.end, ()):
                ends[hop.end, what] = SectionEnd(hop.end, what)
            feeds.update(dict.fromkeys(mode.feeds.get(hop.end, ())))
            wipers = {port for port, what in mode.feeds.get(hop.end, ()) if what == TRACK}
            for port in mode.wire.get(hop.end, ()):
                if port in wipers and how != PICKUP:
                    continue
                beside = port if wipers and port not in wipers else off_track
                todo += [(*each, beside) for each in self.links.get(port, ())]
        hanging = tuple((port, tuple(leads)) for port, leads in branch.items())
        made = SectionWalk(source, how, tuple(hops), tuple(ends.values()), hanging)
        return made, tuple(feeds), tuple(met)
