"""A hookup -> what is heard at its ends when parts of it are gone, leads are patched and loops are switched out."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from functools import cached_property

from rigc.analysis.faults.single_breaks import Part, part_of
from rigc.analysis.leads.leads import Leads
from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.sound_ways import Hookup, SoundWays, stereo_ways
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.inner_ways import sinks
from rigc.model.ways.state_ways import with_loops
from rigc.record import Record

Onward = Mapping[int, Collection[tuple[int, Part]]]
"""Where sound goes from each jack, through which part; jacks by the numbers that a hearing gives them, for a walk passes thousands."""
NOTHING: frozenset[Part] = frozenset()


class Patch(Record):
    """A lead known to be good, from a jack to a jack; whatever is plugged in there comes out, at a panel's jack on that side.

    What is plugged into `alone` comes out too: the other side of a stereo pair, so that one side feeds both outputs."""

    start: Port
    end: Port
    alone: Port | None = None

    def __str__(self) -> str:
        return f"{self.start} → {self.end}"


class LoopsOut(Record):
    """Loops of a switcher that are switched out, by their numbers."""

    switcher: str
    numbers: tuple[int, ...]


class Reached:
    """The jacks that a walk came to, and what stands for them."""

    def __init__(self, numbers: set[int], known: Mapping[Port, int]) -> None:
        self.numbers = numbers
        self._known = known

    def __contains__(self, port: Port) -> bool:
        return self._known.get(port, -1) in self.numbers


class Hearing:
    """Walks along one hookup. `walks` counts them, which is what all this costs."""

    def __init__(self, rig: Rig, hookup: Hookup, leads: Leads) -> None:
        self.rig, self.hookup = rig, hookup
        self.walks = 0
        self._known: dict[tuple[LoopsOut | None, tuple[Patch, ...]], Onward] = {}
        self._there: dict[tuple[int, frozenset[Part]], set[int]] = {}  # by what is known, which stays, and what is gone
        self._ports: list[Port] = []
        self._numbers: dict[Port, int] = {}
        self.leads = tuple((each.start, each.end, part_of(leads, each)) for each in hookup.leads)
        self._leads = tuple((self._number(start), self._number(end), part) for start, end, part in self.leads)
        self._inner = tuple(map(self._way, hookup.inner))
        amps = (port for unit in rig.units.values() if unit.kind != "unit" for port in amp_ends(unit, hookup.wired))
        panels = (port for port in sinks(rig) if port.thing in rig.panels)
        self.sources = hookup.sources
        self._sources = tuple(map(self._number, self.sources))
        whole = self.after(self.sources, NOTHING)
        self.ends = tuple(port for port in dict.fromkeys((*amps, *panels)) if port in whole)
        self._ends = tuple((self._numbers[port], port) for port in self.ends)

    @cached_property
    def ways(self) -> frozenset[Port]:
        """The jacks that lie on some way from a source to an end."""
        there = self._walk(self._plain, self._sources, NOTHING)
        return self._jacks(there & self._walk(self._back, map(self._number, self.ends), NOTHING))

    @cached_property
    def parts(self) -> frozenset[Part]:
        """What lies on some way from a source to an end."""
        ways = {self._numbers[port] for port in self.ways}
        passed = {part for start, ends in self._plain.items() if start in ways for end, part in ends if end in ways}
        return frozenset((*passed, *(("thing", port.thing) for port in (*self.sources, *self.ends))))

    @cached_property
    def steps(self) -> dict[Port, int]:
        """How many jacks and ways each jack on the way lies from the nearest source."""
        found = dict.fromkeys(self._sources, 0)
        here = list(self._sources)
        for number in here:
            for after, _ in self._plain.get(number, ()):
                if after not in found:
                    found[after] = found[number] + 1
                    here.append(after)
        return {self._ports[number]: steps for number, steps in found.items()}

    @cached_property
    def switched(self) -> tuple[LoopsOut, ...]:
        """The settings that can be tried: of each switcher on the way its loops from the first to each next one out, then each alone."""
        found: dict[LoopsOut, None] = {}
        for name in dict.fromkeys(use.switcher for use in self.rig.loops):
            numbers = sorted(use.number for use in self.rig.loops if use.switcher == name and use.stops)
            if any(port.thing == name for port in self.ways):
                found.update((LoopsOut(name, tuple(numbers[:count])), None) for count in range(1, len(numbers) + 1))
                found.update((LoopsOut(name, (number,)), None) for number in numbers)
        return tuple(found)

    def heard(
        self, gone: frozenset[Part], out: LoopsOut | None = None, patches: tuple[Patch, ...] = ()
    ) -> frozenset[Port]:
        """The ends at which a source is heard."""
        return self._audible(self._from_sources(self._onward(out, patches), gone), gone)

    def after(self, ports: Iterable[Port], gone: frozenset[Part]) -> Reached:
        """The jacks that sound reaches from these."""
        return Reached(self._walk(self._plain, map(self._number, ports), gone), self._numbers)

    def before(self, ports: Iterable[Port], gone: frozenset[Part]) -> Reached:
        """The jacks from which sound reaches these."""
        return Reached(self._walk(self._back, map(self._number, ports), gone), self._numbers)

    def alive(self, port: Port, gone: frozenset[Part]) -> bool:
        """Whether the amp or desk of an end is well."""
        return ("thing", port.thing) not in gone

    def sounding(
        self, gone: frozenset[Part], out: LoopsOut | None = None, patches: tuple[Patch, ...] = ()
    ) -> frozenset[Port]:
        """The jacks that lie on some way from a source to an end then."""
        onward = self._onward(out, patches)
        there = self._from_sources(onward, gone)
        back = self._walk(_turned(onward), map(self._number, self._audible(there, gone)), gone)
        return self._jacks(there & back)

    def number(self, port: Port) -> int:
        """What stands for a jack of a walk; -1 for what no walk comes to."""
        return self._numbers.get(port, -1)

    def passed_over(self, sounding: frozenset[Port]) -> tuple[str, ...]:
        """The things on the way of which no jack is among these."""
        still = {port.thing for port in sounding}
        return tuple(dict.fromkeys(name for kind, name in sorted(self.parts) if kind == "thing" and name not in still))

    def _number(self, port: Port) -> int:
        """What stands for a jack."""
        number = self._numbers.setdefault(port, len(self._ports))
        if number == len(self._ports):
            self._ports.append(port)
        return number

    def _way(self, way: tuple[Port, Port]) -> tuple[int, int, Part]:
        return self._number(way[0]), self._number(way[1]), ("thing", way[0].thing)

    def _jacks(self, numbers: Iterable[int]) -> frozenset[Port]:
        return frozenset(self._ports[number] for number in numbers)

    @cached_property
    def _plain(self) -> Onward:
        return self._onward(None, ())

    @cached_property
    def _back(self) -> Onward:
        return _turned(self._plain)

    def _onward(self, out: LoopsOut | None, patches: tuple[Patch, ...]) -> Onward:
        if (out, patches) not in self._known:
            self._known[out, patches] = self._joined(out, patches)
        return self._known[out, patches]

    def _joined(self, out: LoopsOut | None, patches: tuple[Patch, ...]) -> Onward:
        starts = {self._number(patch.start) for patch in patches}
        plugs = (plug for patch in patches for plug in (patch.end, patch.alone) if plug is not None)
        ends = set(map(self._number, plugs))
        inner = self._inner
        for empty in (patch.alone for patch in patches if patch.alone is not None):
            inner = tuple(way for way in inner if way[2] != ("thing", empty.thing))
            more = stereo_ways(self.rig, self.rig.units[empty.thing], self.hookup.wired - {empty})
            inner += tuple(map(self._way, more))
        if out is not None:
            unit = self.rig.units[out.switcher]
            left = with_loops(unit, [loop for loop in unit.loops if loop.number not in out.numbers])
            inner = tuple(way for way in inner if way[2] != ("thing", out.switcher))
            inner += tuple(map(self._way, stereo_ways(self.rig, left, self.hookup.wired)))
        onward: dict[int, list[tuple[int, Part]]] = {}
        for start, end, part in self._leads:
            if start not in starts and end not in ends:
                onward.setdefault(start, []).append((end, part))
        for start, end, part in inner:
            onward.setdefault(start, []).append((end, part))
        for patch in patches:
            onward.setdefault(self._number(patch.start), []).append((self._number(patch.end), ("patch", "")))
        return onward

    def _walk(self, onward: Onward, starts: Iterable[int], gone: frozenset[Part]) -> set[int]:
        self.walks += 1
        reached = {
            number
            for number in starts
            if number not in self._sources or ("thing", self._ports[number].thing) not in gone
        }
        left = list(reached)
        while left:
            for number, part in onward.get(left.pop(), ()):
                if number not in reached and part not in gone:
                    reached.add(number)
                    left.append(number)
        return reached

    def _from_sources(self, onward: Onward, gone: frozenset[Part]) -> set[int]:
        """A walk from all sources, once for the same ways: a repair that is tried for many breaks asks for it over and over."""
        known = (id(onward), gone)
        if known not in self._there:
            self._there[known] = self._walk(onward, self._sources, gone)
        return self._there[known]

    def _audible(self, reached: Collection[int], gone: frozenset[Part]) -> frozenset[Port]:
        return frozenset(end for number, end in self._ends if number in reached and self.alive(end, gone))


def _turned(onward: Onward) -> Onward:
    back: dict[int, list[tuple[int, Part]]] = {}
    for start, ends in onward.items():
        for end, part in ends:
            back.setdefault(end, []).append((start, part))
    return back


class Hearings(Record):
    """One for each way in which the rig is wired and sounds."""

    all: tuple[Hearing, ...]


def hearings(rig: Rig, ways: SoundWays, leads: Leads) -> Hearings:
    """Of the hookups with a source that is heard somewhere."""
    found = (Hearing(rig, hookup, leads) for hookup in ways.hookups if hookup.sources)
    return Hearings(tuple(hearing for hearing in found if hearing.ends))


COMPUTE = hearings
