"""A jack that drives leads, in a state -> the leads up to the next inputs, and what each of those is."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Mapping

from rigc.analysis.signal.loading.straight_run import Links, StraightRun
from rigc.analysis.signal.unit_mode import TRACK, Mode, mode_of
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.audio_state import UNPOWERED, AudioState
from rigc.model.ways.state_ways import leads_in, switched_loops
from rigc.model.wishes import Connection
from rigc.record import Record

PICKUP, OUTSIDE = "pickup", "outside"

_Key = tuple[str, bool, frozenset[tuple[str, int]], bool, frozenset[str]]
_Passed = tuple[tuple[Port, Links], ...]
_Arrival = tuple[tuple["SectionEnd", ...], "Feeds", tuple[tuple[Port, Links, bool], ...], bool]
"""What a lead meets: ends of its section, what is driven behind it, on to which jacks it is wire, with their leads and whether each is a
wiper, and whether any is."""
_NONE: frozenset[tuple[str, int]] = frozenset()
_NO_RUN = StraightRun()


Feeds = tuple[tuple[Port, str], ...]
"""Jacks that are driven by what ends a section, and how."""


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


class KeptWalk(Record):
    """A walk, what it drives, and everything that it depends on: the leads at each jack it passed; which jacks were `plugged` in its wiring;
    of the units it met which are on, and which of their loops (of all that are `switched`) are in."""

    walk: SectionWalk
    feeds: Feeds
    passed: _Passed
    plugged: Mapping[str, frozenset[str]]
    met: frozenset[str]
    on: frozenset[str]
    switched: frozenset[tuple[str, int]]
    loops: frozenset[tuple[str, int]]
    dark: bool

    def holds_in(self, state: AudioState) -> bool:
        """Whether the walk is the same in a state, wired as it was."""
        if self.met and self.dark != (state.kind == UNPOWERED):
            return False
        return state.on & self.met == self.on and state.loops & self.switched == self.loops


class Kept:
    """What was found once: modes of units, and walks by what drives them and a unit that is on there. All wirings of a rig share it."""

    def __init__(self) -> None:
        self.modes: dict[_Key, Mode] = {}
        self._walks: dict[tuple[Port, str], dict[str | None, list[KeptWalk]]] = {}

    def walks(self, source: Port, how: str, state: AudioState) -> Iterator[KeptWalk]:
        """Those of what a jack drives that may hold in a state: without any unit on, or with one that is on there."""
        filed = self._walks.get((source, how), {})
        yield from filed.get(None, ())
        on = state.on if len(state.on) < len(filed) else filter(state.on.__contains__, filed)
        for unit in on:
            yield from filed.get(unit, ())

    def keep(self, known: KeptWalk) -> None:
        """Keeps one more."""
        filed = self._walks.setdefault((known.walk.source, known.walk.how), {})
        filed.setdefault(min(known.on, default=None), []).append(known)


class Walker:
    """Walks sections in one wiring; what a walk met is kept, and serves every state in which that is the same."""

    def __init__(self, rig: Rig, base: AudioState, kept: Kept) -> None:
        self.rig = rig
        self.kept = kept
        self.switched = switched_loops(rig)
        self.loops_of: dict[str, frozenset[tuple[str, int]]] = {}
        for pair in self.switched:
            self.loops_of[pair[0]] = self.loops_of.get(pair[0], frozenset()) | {pair}
        numbers = {id(each): at for at, each in enumerate(rig.connections)}
        leads = leads_in(rig, base)
        found: dict[Port, list[tuple[int, Connection]]] = {}
        for each in leads:
            found.setdefault(each.start, []).append((numbers[id(each)], each))
        self.links = {port: tuple(links) for port, links in found.items()}
        self.wired = frozenset(port for each in leads for port in (each.start, each.end))
        self._plugged: dict[str, frozenset[str]] = {}
        for port in self.wired:
            self._plugged[port.thing] = self._plugged.get(port.thing, frozenset()) | {port.jack}
        self._alike: dict[int, bool] = {}
        self._arrivals: dict[tuple[int, int], _Arrival] = {}
        self._base = base
        self._runs: dict[int, tuple[StraightRun, int] | None] = {}
        self._switched_in: tuple[AudioState | None, dict[int, list[int]]] = None, {}  # of the state that was asked last
        self._plain_modes: dict[tuple[str, bool, bool] | None, Mode] = {}  # in this wiring, of units without loops

    def mode(self, name: str, state: AudioState) -> Mode:
        """What a unit is in a state."""
        plain = None if name in self.loops_of else (name, name in state.on, state.kind == UNPOWERED)
        if plain in self._plain_modes:
            return self._plain_modes[plain]
        key = self._key(name, state)
        if key not in self.kept.modes:
            self.kept.modes[key] = mode_of(self.rig, self.rig.units[name], state, self.wired, self.switched)
        if plain is not None:
            self._plain_modes[plain] = self.kept.modes[key]
        return self.kept.modes[key]

    def arrival(self, at: int, port: Port, state: AudioState) -> _Arrival:
        """What the lead of that number, which ends at a port of a unit, meets there in a state."""
        mode = self.mode(port.thing, state)
        key = (at, id(mode))  # modes are kept as long as this is
        if key not in self._arrivals:
            feeds = mode.feeds.get(port, ())
            wipers = {out for out, what in feeds if what == TRACK}
            outs = tuple((out, self.links.get(out, ()), out in wipers) for out in mode.wire.get(port, ()))
            ends = tuple(SectionEnd(port, what) for what in mode.ends.get(port, ()))
            self._arrivals[key] = ends, tuple(feeds), outs, bool(wipers)
        return self._arrivals[key]

    def walk(self, source: Port, how: str, state: AudioState) -> tuple[SectionWalk, Feeds]:
        """The section that a jack drives in a state, and what is driven behind it."""
        for known in self.kept.walks(source, how, state):
            if known.holds_in(state) and self._wires_alike(known):
                return known.walk, known.feeds
        made = _Walk(self, source, how, state)
        walk = made.walk()
        met = frozenset(made.met)
        switched = _NONE.union(*(self.loops_of[name] for name in self.loops_of.keys() & made.met.keys()))
        known = KeptWalk(
            walk,
            tuple(made.feeds),
            tuple(made.passed),
            self._plugged,
            met,
            state.on & met,
            switched,
            state.loops & switched,
            state.kind == UNPOWERED,
        )
        self.kept.keep(known)
        return known.walk, known.feeds

    def straight(self, at: int, state: AudioState) -> tuple[StraightRun, int, int]:
        """The run in which the lead of that number lies, its place there, and up to where nothing along it is switched in a state."""
        found = self._runs[at] if at in self._runs else self._run(at)
        if found is None or state.kind == UNPOWERED:
            return _NO_RUN, 0, 0
        run, place = found
        if self._switched_in[0] is not state:
            self._switched_in = state, {}
        switched = self._switched_in[1]
        if id(run) not in switched:
            loops = state.loops ^ self._base.loops
            switched[id(run)] = run.switched((state.on ^ self._base.on).union(name for name, _ in loops))
        return run, place, run.until(place, switched[id(run)])

    def _run(self, at: int) -> tuple[StraightRun, int] | None:
        """The run from the lead of that number on, as far as none of its leads lies in another."""
        run, onward = StraightRun(), at
        while onward not in self._runs:
            self._runs[onward] = None
            port = self.rig.connections[onward].end
            if port.thing not in self.rig.units:
                break
            ends, feeds, outs, _ = self.arrival(onward, port, self._base)
            if ends or feeds or len(outs) != 1 or len(outs[0][1]) != 1:
                break
            out, links, _ = outs[0]
            self._runs[onward] = run, run.add(onward, port.thing, out, links)
            onward = links[0][0]
        return self._runs[at]

    def _wires_alike(self, known: KeptWalk) -> bool:
        """Whether everything on a walk is wired here as it was there."""
        if known.plugged is self._plugged:
            return True
        if id(known) not in self._alike:
            self._alike[id(known)] = all(self.links.get(port, ()) == links for port, links in known.passed) and all(
                self._jacks(name) == known.plugged.get(name, frozenset()) for name in known.met
            )
        return self._alike[id(known)]

    def _jacks(self, name: str) -> frozenset[str]:
        return self._plugged.get(name, frozenset())

    def _key(self, name: str, state: AudioState) -> _Key:
        loops = self.loops_of.get(name)
        held = loops & state.loops if loops else _NONE
        return name, name in state.on, held, state.kind == UNPOWERED, self._jacks(name)


class _Walk:
    """One walk on its way: `todo` holds leads, each with the treadle's jack beside the wiper that it hangs on."""

    def __init__(self, walker: Walker, source: Port, how: str, state: AudioState) -> None:
        self.walker, self.source, self.how, self.state = walker, source, how, state
        self.hops: dict[int, None] = {}
        self.ends: dict[tuple[Port, str], SectionEnd] = {}
        self.feeds: dict[tuple[Port, str], None] = {}
        self.branch: dict[Port, list[int]] = {}
        self.met: dict[str, None] = {}
        self.passed: list[tuple[Port, Links]] = []
        self.todo: deque[tuple[int, Connection, Port | None]] = deque()

    def walk(self) -> SectionWalk:
        self._onward(self.source, self.walker.links.get(self.source, ()), None)
        while self.todo:
            at, hop, off_track = self.todo.popleft()
            if at not in self.hops:
                if not self.todo and self._straight_on(at, off_track):
                    continue
                self.hops[at] = None
                if off_track is not None:
                    self.branch.setdefault(off_track, []).append(at)
                self._arrive(at, hop.end, off_track)
        hanging = tuple((port, tuple(leads)) for port, leads in self.branch.items())
        return SectionWalk(self.source, self.how, tuple(self.hops), tuple(self.ends.values()), hanging)

    def _straight_on(self, at: int, off_track: Port | None) -> bool:
        """Goes along the run in which a lead lies, where that is the only one to be walked; False where there is none."""
        run, start, end = self.walker.straight(at, self.state)
        hops = run.hops[start:end]
        if not hops or not self.hops.keys().isdisjoint(hops):
            return False
        self.hops.update(dict.fromkeys(hops))
        if off_track is not None:
            self.branch.setdefault(off_track, []).extend(hops)
        self.met.update(dict.fromkeys(run.units[start:end]))
        self.passed += run.passed[start:end]
        self.todo += ((onward, hop, off_track) for onward, hop in run.passed[end - 1][1])
        return True

    def _arrive(self, at: int, port: Port, off_track: Port | None) -> None:
        if port.thing not in self.walker.rig.units:
            links = self.walker.links.get(port, ())
            if not links:
                self.ends[port, OUTSIDE] = SectionEnd(port, OUTSIDE)
            self._onward(port, links, off_track)
            return
        self.met[port.thing] = None
        ends, feeds, outs, tracked = self.walker.arrival(at, port, self.state)
        for end in ends:
            self.ends[port, end.what] = end
        if feeds:
            self.feeds.update(dict.fromkeys(feeds))
        for out, links, wiper in outs:
            if self.how == PICKUP or not wiper:
                self._onward(out, links, out if tracked and not wiper else off_track)

    def _onward(self, port: Port, links: Links, off_track: Port | None) -> None:
        self.passed.append((port, links))
        for at, hop in links:
            self.todo.append((at, hop, off_track))
