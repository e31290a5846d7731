"""A MIDI chain passes too many thru stages, or one of its leads is too long.

Why it matters: each thru passes through an optical input, whose edges are not alike: after some stages a bit is read wrongly,
now and then. A long lead rounds the edges in the same way.
What to do: feed the units side by side from a splitter in place of one after the other; shorten the lead, or put a thru box
halfway.
Source: MIDI 1.0 electrical specification (15 m from jack to jack); three thru stages are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_way import MidiLink, MidiWay
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.figures import metres_cut
from rigc.facts.midi import LONGEST_MM, MOST_THRUS

KIND = Kind(
    "long-midi-chain",
    Level.WARNING,
    __doc__,
    "at most 3 thru stages in a row, at most 15 m from jack to jack",
    "MIDI 1.0 electrical specification; common practice, no source, for the thru stages",
)


def long_midi_chain(control: ControlMap) -> Iterator[Diagnostic]:
    """One finding for each chain, at the unit that lies furthest; one for each long lead; one for leads of unknown length."""
    over = [way for way in control.ways if way.stages > MOST_THRUS.value]
    for way in over:
        if not any(other.links[: len(way.links)] == way.links for other in over if other is not way):
            yield _stages(way)
    for link in control.links:
        if link.length is not None and link.length > 10 * LONGEST_MM.value:
            yield _long(link, link.length)
    unknown = [link for link in control.links if link.length is None]
    if unknown:
        yield _unknown(unknown)


def _stages(way: MidiWay) -> Diagnostic:
    return KIND.at(
        way.links[-1].span,
        f"MIDI from '{way.source}' to '{way.unit}' passes {way.stages.text} thru stages, {MOST_THRUS.value:g} are the most",
        subject=(way.unit, *map(str, way.thrus)),
        label="the last link",
        numbers=(Number("thru stages", way.stages, ""), Number("most", MOST_THRUS.value, "")),
        note=f"it passes {', '.join(map(str, way.thrus))}",
        help=f"feed '{way.unit}' from a MIDI splitter near '{way.source}'",
    )


def _long(link: MidiLink, length: int) -> Diagnostic:
    return KIND.at(
        link.span,
        f"MIDI lead {link.lead} from '{link.start}' to '{link.end}' is {metres_cut(length)} m long, {LONGEST_MM.value / 1000:g} m are the most",
        subject=(link.lead,),
        label="this lead",
        numbers=(Number("length", length / 10, "mm"), Number("most", LONGEST_MM.value, "mm")),
        help="shorten it, or put a thru box halfway",
    )


def _unknown(links: list[MidiLink]) -> Diagnostic:
    marks = [link.lead for link in links]
    spoken = f"MIDI lead {marks[0]} is" if len(marks) == 1 else f"the MIDI leads {', '.join(marks)} are"
    return KIND.cant_check(
        links[0].span,
        f"whether {spoken} at most {LONGEST_MM.value / 1000:g} m long is not known: no length can be computed",
        subject=tuple(marks),
        help=f"place both its ends, or write in the leads block how long it is: `{marks[0]} {links[0].start} -> {links[0].end} made ___ mm`",
    )


CHECK = long_midi_chain
