"""MIDI connections, leads and lengths -> the ways by which messages reach a unit, and the rings in which they run round."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class MidiLink(Record):
    """Two MIDI jacks joined. `lead` is empty where no lead is between them; `length` is its finished length in tenths
    of a millimetre, None where it is not known. `thru`: it starts at a thru jack, which passes on what comes in."""

    lead: str
    start: Port
    end: Port
    thru: bool
    length: int | None
    span: Span


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


def midi_links(rig: Rig, leads: Leads, lengths: CableLengths) -> tuple[MidiLink, ...]:
    """Every MIDI connection in the order of the source, with its lead."""
    marks = {frozenset((lead.start, lead.end)): lead for lead in leads.all if lead.signal == "midi"}
    links = []
    for each in rig.connections:
        if each.signal == "midi":
            lead, jack = marks.get(frozenset((each.start, each.end))), rig.jack(each.start)
            thru = jack is not None and jack.role == "midi thru"
            mark = "" if lead is None else lead.mark
            length = 0 if lead is None else _length(lengths, lead)
            links.append(MidiLink(mark, each.start, each.end, thru, length, each.span))
    return tuple(links)


def midi_ways(links: tuple[MidiLink, ...]) -> tuple[MidiWay, ...]:
    """The ways to each unit in the order of the source: one, or several where inputs are merged.

    A way begins at an out jack, whose unit sends afresh, or at a thru of a unit that nothing feeds. A ring of thru jacks
    without a beginning gives no way.
    """
    return tuple(MidiWay(way) for link in links for way in _back(links, (link,)))


def midi_rings(links: tuple[MidiLink, ...]) -> tuple[tuple[MidiLink, ...], ...]:
    """The rings of links by which a unit's messages come back to it, each once, from its first link in the source."""
    found: dict[frozenset[tuple[Port, Port]], tuple[MidiLink, ...]] = {}
    for link in links:
        ring = _shortest_ring(links, link)
        if ring and not any(link in other for other in found.values()):
            found[frozenset((each.start, each.end) for each in ring)] = ring
    return tuple(found.values())


def _length(lengths: CableLengths, lead: Lead) -> int | None:
    if lead.existing_mm is not None:
        return round(10 * lead.existing_mm.value)
    made = lengths.lengths.get(lead.mark)
    return None if made is None else made.finished


def _back(links: tuple[MidiLink, ...], way: tuple[MidiLink, ...]) -> Iterator[tuple[MidiLink, ...]]:
    first = way[0]
    before = [link for link in links if first.thru and link.end.thing == first.start.thing]
    if not before:
        yield way
    for link in before:
        if link not in way:
            yield from _back(links, (link, *way))


def _shortest_ring(links: tuple[MidiLink, ...], first: MidiLink) -> tuple[MidiLink, ...]:
    """The fewest links that lead from the end of the first back to its start; empty where none do."""
    ways: list[tuple[MidiLink, ...]] = [(first,)]
    seen = {first.end.thing}
    for way in ways:
        if way[-1].end.thing == first.start.thing:
            return way
        for link in links:
            if link.start.thing == way[-1].end.thing and (
                link.end.thing not in seen or link.end.thing == first.start.thing
            ):
                seen.add(link.end.thing)
                ways.append((*way, link))
    return ()
