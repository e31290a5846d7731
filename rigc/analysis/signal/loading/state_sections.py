"""Rig and states -> every section of the signal path with the states in which it is there; equal ones are one.

The all-off state of each wiring is walked in full. In another state only what its switched units change is walked
again, so that a long chain does not cost its square.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator

from rigc.analysis.signal.audio_states import AudioStates
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP, Kept, SectionWalk, Walker
from rigc.analysis.signal.unit_mode import STAGE
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.audio_state import UNPOWERED, AudioState
from rigc.model.ways.state_ways import BLOCKED, UNKNOWN
from rigc.model.wishes import When
from rigc.record import Record

_Driven = tuple[Port, str]
_Sections = dict[_Driven, SectionWalk]


class Where(Record):
    """The states of one wiring in which a section is there: `only` these, or (`only` is None) all with power `but` these;
    `dark` where it is there without power too."""

    wiring: When
    only: tuple[AudioState, ...] | None
    but: tuple[AudioState, ...] = ()
    dark: bool = False

    def states(self, all_states: AudioStates) -> tuple[AudioState, ...]:
        """The states meant, in order."""
        return self.only if self.only is not None else tuple(self.each(all_states))

    def each(self, all_states: AudioStates) -> Iterator[AudioState]:
        """The states meant, one by one: mostly only the first is asked for, and there are as many as units."""
        if self.only is not None:
            yield from self.only
            return
        gone = {state.name for state in self.but}
        for state in all_states.of_wiring.get(self.wiring, ()):
            if self.dark if state.kind == UNPOWERED else state.name not in gone:
                yield state


def state_sections(rig: Rig, states: AudioStates) -> dict[SectionWalk, tuple[Where, ...]]:
    """All sections in the order in which they are met."""
    found: dict[SectionWalk, list[Where]] = {}
    kept = Kept()
    for wiring in states.wirings:
        for walk, where in _Wiring(rig, list(states.of_wiring[wiring]), kept).sections().items():
            found.setdefault(walk, []).append(where)
    return {walk: tuple(places) for walk, places in found.items()}


class _Wiring:
    """The sections of one wiring; the first of its states is all off."""

    def __init__(self, rig: Rig, states: list[AudioState], kept: Kept) -> None:
        self.rig = rig
        self.base, *self.others = states
        self.walker = Walker(rig, self.base, kept)
        self.sources = self._sources()
        self.sections_off = self._all(self.base)
        self.touching: dict[str, list[_Driven]] = {}
        for driven, walk in self.sections_off.items():
            for name in dict.fromkeys(rig.connections[at].end.thing for at in walk.hops):
                self.touching.setdefault(name, []).append(driven)

    def sections(self) -> dict[SectionWalk, Where]:
        """Each section with its states."""
        extra: dict[SectionWalk, list[AudioState]] = {}
        gone: dict[_Driven, list[AudioState]] = {}
        dark: set[_Driven] = set()
        for state in self.others:
            changes = self._dead(state) if state.kind == UNPOWERED else self._changes(state)
            for driven, walk in changes.items():
                before = self.sections_off.get(driven)
                if walk is not None and (walk is before or walk == before):
                    dark.update((driven,) if state.kind == UNPOWERED else ())
                    continue
                if before is not None and state.kind != UNPOWERED:
                    gone.setdefault(driven, []).append(state)
                if walk is not None:
                    extra.setdefault(walk, []).append(state)
        made = {
            walk: Where(self.base.when, None, tuple(gone.get(driven, ())), driven in dark)
            for driven, walk in self.sections_off.items()
        }
        return {**made, **{walk: Where(self.base.when, tuple(held)) for walk, held in extra.items()}}

    def _dead(self, state: AudioState) -> dict[_Driven, SectionWalk | None]:
        """Without power only what an instrument drives by itself is told, and only where sound gets through."""
        found = (self.walker.walk(*source, state)[0] for source in self.sources)
        return {(walk.source, walk.how): walk for walk in found if walk.hops and not walk.meets(BLOCKED, UNKNOWN)}

    def _changes(self, state: AudioState) -> dict[_Driven, SectionWalk | None]:
        """What is another section than with all off, or none any more (None)."""
        loops = [name for name, _ in state.loops]
        names = [name for name in dict.fromkeys((*sorted(state.on), *sorted(loops))) if name in self.rig.units]
        pairs = [(name, self.walker.mode(name, self.base), self.walker.mode(name, state)) for name in names]
        changed = [(name, before, now) for name, before, now in pairs if before is not now and before != now]
        if not changed:
            return {}
        if any(before.joined != now.joined for _, before, now in changed):
            now_all = self._all(state)
            return {driven: now_all.get(driven) for driven in dict.fromkeys((*self.sections_off, *now_all))}
        reached = [(before, now) for name, before, now in changed if name in self.touching]
        new = [driven for _, now in reached for driven in _fed(now.feeds.values())]
        old = {driven for before, _ in reached for driven in _fed(before.feeds.values())} - set(new)
        again = [driven for name, _, _ in changed for driven in self.touching.get(name, ()) if driven not in old]
        found: dict[_Driven, SectionWalk | None] = {driven: None for driven in self.sections_off if driven in old}
        for driven in dict.fromkeys((*again, *new)):
            walk, _ = self.walker.walk(*driven, state)
            if walk.hops:
                found[driven] = walk
        return found

    def _all(self, state: AudioState) -> _Sections:
        found: _Sections = {}
        todo = deque(self.sources)
        while todo:
            driven = todo.popleft()
            if driven in found:
                continue
            walk, feeds = self.walker.walk(*driven, state)
            if walk.hops:
                found[driven] = walk
                todo += feeds
        return found

    def _sources(self) -> list[_Driven]:
        """Instruments, and panel jacks that no lead of this wiring feeds."""
        fed = {each.end for leads in self.walker.links.values() for _, each in leads}
        sources: list[_Driven] = []
        for port in self.walker.links:
            instrument = self.rig.instruments.get(port.thing)
            if instrument is not None:
                sources.append((port, STAGE if instrument.active else PICKUP))
            elif port.thing in self.rig.panels and port not in fed:
                sources.append((port, OUTSIDE))
        return sources


def _fed(feeds: Iterable[tuple[_Driven, ...]]) -> list[_Driven]:
    return [driven for each in feeds for driven in each]
