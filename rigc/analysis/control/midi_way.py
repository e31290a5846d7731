"""MIDI connections, leads and lengths -> the ways by which messages reach a unit, and the rings in which they run round."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import assumed


class MidiLink(Record):
    """Two MIDI jacks joined. `lead` is empty where no lead is between them; `length` is its finished length in tenths
    of a millimetre, None where it is not known, and leans on an assumed fact if `assumed`. `thru`: it starts at a thru
    jack, which passes on what comes in. `crossover` and `shield_at_both` are how its lead is stated to be made."""

    lead: str
    start: Port
    end: Port
    thru: bool
    length: int | None
    assumed: bool
    span: Span
    crossover: bool = False
    shield_at_both: bool = False


class MidiWay(Record):
    """A way from the jack that sends to the jack of a unit, link by link."""

    links: tuple[MidiLink, ...]

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
        return tuple(link.start for link in self.links if link.thru)

    @property
    def length(self) -> int | None:
        """All leads of the way in tenths of a millimetre; None where one is not known."""
        lengths = [link.length for link in self.links]
        return None if None in lengths else sum(length for length in lengths if length is not None)

    @property
    def assumed(self) -> bool:
        """Whether its length leans on an assumed fact."""
        return any(link.assumed for link in self.links)


def midi_links(rig: Rig, leads: Leads, lengths: CableLengths) -> tuple[MidiLink, ...]:
    """Every MIDI connection in the order of the source, with its lead."""
    marks = {frozenset((lead.start, lead.end)): lead for lead in leads.all if lead.signal == "midi"}
    links = []
    for each in rig.connections:
        if each.signal == "midi":
            lead, jack = marks.get(frozenset((each.start, each.end))), rig.jack(each.start)
            thru = jack is not None and jack.role == "midi thru"
            mark = "" if lead is None else lead.mark
            length, assumed = (0, False) if lead is None else _length(lengths, lead)
            made = (each.crossover, each.shield_at_both)
            links.append(MidiLink(mark, each.start, each.end, thru, length, assumed, each.span, *made))
    return tuple(links)


def midi_ways(links: tuple[MidiLink, ...]) -> tuple[MidiWay, ...]:
    """The ways to each unit in the order of the source: one, or several where inputs are merged.

    A way begins at an out jack, whose unit sends afresh, or at a thru of a unit that nothing feeds. A ring of thru jacks
    without a beginning gives no way.
    """
    feeding = _by_thing((link.end.thing, link) for link in links)
    return tuple(MidiWay(way) for link in links for way in _back(feeding, link))


def midi_rings(links: tuple[MidiLink, ...]) -> tuple[tuple[MidiLink, ...], ...]:
    """The rings of links by which a unit's messages come back to it, each once, from its first link in the source."""
    leaving = _by_thing((link.start.thing, link) for link in links)
    found: list[tuple[MidiLink, ...]] = []
    for link in links:
        if not any(link is other for ring in found for other in ring):
            ring = _shortest_ring(leaving, link)
            found += [ring] if ring else []
    return tuple(found)


def _by_thing(pairs: Iterable[tuple[str, MidiLink]]) -> dict[str, list[MidiLink]]:
    found: dict[str, list[MidiLink]] = {}
    for thing, link in pairs:
        found.setdefault(thing, []).append(link)
    return found


def _length(lengths: CableLengths, lead: Lead) -> tuple[int | None, bool]:
    """The length of a lead as it is supplied; and whether that leans on an assumed fact."""
    return lengths.supplied_tenths(lead.mark), assumed(lengths.as_supplied[lead.mark])


def _back(feeding: dict[str, list[MidiLink]], last: MidiLink) -> Iterator[tuple[MidiLink, ...]]:
    """The ways that end with a link, each followed backwards through thru jacks to its sender."""
    waiting: list[tuple[MidiLink, ...]] = [(last,)]
    while waiting:
        way = waiting.pop()
        before = feeding.get(way[0].start.thing, []) if way[0].thru else []
        if not before:
            yield way
        waiting += [(link, *way) for link in reversed(before) if not any(link is other for other in way)]


def _shortest_ring(leaving: dict[str, list[MidiLink]], first: MidiLink) -> tuple[MidiLink, ...]:
    """The fewest links that lead from the end of the first back to its start; empty where none do."""
    ways: list[tuple[MidiLink, ...]] = [(first,)]
    seen = {first.end.thing}
    for way in ways:
        if way[-1].end.thing == first.start.thing:
            return way
        for link in leaving.get(way[-1].end.thing, ()):
            if link.end.thing not in seen:
                seen.add(link.end.thing)
                ways.append((*way, link))
    return ()
