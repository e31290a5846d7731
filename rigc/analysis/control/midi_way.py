"""MIDI connections, leads and lengths -> the ways by which messages reach a unit, and the rings in which they run round.

Of each way: `lantxl.midi.length`, `lantxl.midi.thrus`; `midi-2` is a second way to the same unit.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import AnyFigure, Figure, Lacking, figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found, total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import COUNT, TENTHS


class MidiLink(Record):
    """Two MIDI jacks joined. `lead` is empty where no lead is between them; `supplied` is how long that is as it is
    supplied, in tenths of a millimetre, None where there is none. `thru`: it starts at a thru
    jack, which passes on what comes in. `crossover` and `shield_at_both` are how its lead is stated to be made."""

    lead: str
    start: Port
    end: Port
    thru: bool
    supplied: AnyFigure | None
    span: Span
    crossover: bool = False
    shield_at_both: bool = False

    @property
    def length(self) -> int | None:
        """In whole tenths of a millimetre, 0 where no lead is between them; None where it is not known."""
        if self.supplied is None:
            return 0
        return None if isinstance(self.supplied, Lacking) else round(self.supplied)


class MidiWay(Record):
    """A way from the jack that sends to the jack of a unit, link by link: all its leads in tenths of a millimetre, and how
    many thru jacks it passes."""

    links: tuple[MidiLink, ...]
    leads: AnyFigure
    stages: Figure

    @property
    def source(self) -> str:
        """The unit that sends."""
        return self.links[0].start.thing

    @property
    def unit(self) -> str:
        """The unit that is reached."""
        return self.links[-1].end.thing

    @property
    def thrus(self) -> tuple[Port, ...]:
        """The thru jacks that are passed: each is one stage, however many outlets a splitter has beside it."""
        return _thrus(self.links)


def midi_links(rig: Rig, leads: Leads, lengths: CableLengths) -> tuple[MidiLink, ...]:
    """Every MIDI connection in the order of the source, with its lead."""
    marks = {frozenset((lead.start, lead.end)): lead for lead in leads.all if lead.signal == "midi"}
    links = []
    for each in rig.connections:
        if each.signal == "midi":
            lead, jack = marks.get(frozenset((each.start, each.end))), rig.jack(each.start)
            thru = jack is not None and jack.role == "midi thru"
            mark = "" if lead is None else lead.mark
            supplied = None if lead is None else lengths.as_supplied[lead.mark]
            made = (each.crossover, each.shield_at_both)
            links.append(MidiLink(mark, each.start, each.end, thru, supplied, each.span, *made))
    return tuple(links)


def midi_ways(rig: Rig, links: tuple[MidiLink, ...]) -> tuple[MidiWay, ...]:
    """The ways to each unit in the order of the source: one, or several where inputs are merged.

    A way begins at an out jack, whose unit sends afresh, or at a thru of a unit that nothing feeds. A ring of thru jacks
    without a beginning gives no way.
    """
    feeding = _by_thing((link.end.thing, link) for link in links)
    counts: dict[str, int] = {}
    ways = []
    for way in (way for link in links for way in _back(feeding, link)):
        unit = way[-1].end.thing
        number = counts[unit] = counts.get(unit, 0) + 1
        name = f"{unit}.midi{'' if number == 1 else f'-{number}'}"
        ways.append(MidiWay(way, _leads(name, way), _stages(rig, name, way)))
    return tuple(ways)


def _leads(name: str, links: tuple[MidiLink, ...]) -> AnyFigure:
    return figure(
        f"{name}.length",
        total(link.supplied for link in links if link.supplied is not None),
        TENTHS,
        rule="all leads on the way from the jack that sends",
        source=ARITHMETIC,
    )


def _thrus(links: tuple[MidiLink, ...]) -> tuple[Port, ...]:
    return tuple(link.start for link in links if link.thru)


def _stages(rig: Rig, name: str, links: tuple[MidiLink, ...]) -> Figure:
    passed = _thrus(links)
    told = ", ".join(map(str, passed)) or f"straight from {links[0].start}"
    jacks = (mentioned(str(port), "thru", None if (jack := rig.jack(port)) is None else jack.span) for port in passed)
    return known_figure(
        f"{name}.thrus",
        found(len(passed), lambda: f"{told}: {len(passed)}"),
        COUNT,
        *jacks,
        rule="thru jacks that are passed, each one stage",
        source="counting",
    )


def midi_rings(links: tuple[MidiLink, ...]) -> tuple[tuple[MidiLink, ...], ...]:
    """The rings of links by which a unit's messages come back to it, each once, from its first link in the source."""
    leaving = _by_thing((link.start.thing, link) for link in links)
    found: list[tuple[MidiLink, ...]] = []
    told: set[int] = set()
    for link in links:
        ring = () if id(link) in told else _shortest_ring(leaving, link)
        if ring:
            found.append(ring)
            told.update(map(id, ring))
    return tuple(found)


def _by_thing(pairs: Iterable[tuple[str, MidiLink]]) -> dict[str, list[MidiLink]]:
    found: dict[str, list[MidiLink]] = {}
    for thing, link in pairs:
        found.setdefault(thing, []).append(link)
    return found


def _back(feeding: dict[str, list[MidiLink]], last: MidiLink) -> Iterator[tuple[MidiLink, ...]]:
    """The ways that end with a link, each followed backwards through thru jacks to its sender."""
    waiting = [[last]]
    while waiting:
        way = waiting.pop()  # from its end on
        passed = set(map(id, way))
        while True:
            before = feeding.get(way[-1].start.thing, []) if way[-1].thru else []
            fresh = [link for link in before if id(link) not in passed]
            if not fresh:
                break
            waiting += [[*way, link] for link in reversed(fresh[1:])]
            way.append(fresh[0])
            passed.add(id(fresh[0]))
        if not before:
            yield tuple(reversed(way))


def _shortest_ring(leaving: dict[str, list[MidiLink]], first: MidiLink) -> tuple[MidiLink, ...]:
    """The fewest links that lead from the end of the first back to its start; empty where none do."""
    reached: dict[str, MidiLink] = {first.end.thing: first}  # by which link first
    waiting = deque([first.end.thing])
    while waiting and first.start.thing not in reached:
        for link in leaving.get(waiting.popleft(), ()):
            if link.end.thing not in reached:
                reached[link.end.thing] = link
                waiting.append(link.end.thing)
    if first.start.thing not in reached:
        return ()
    ring = [reached[first.start.thing]]
    while ring[-1] is not first:
        ring.append(reached[ring[-1].start.thing])
    return tuple(reversed(ring))
