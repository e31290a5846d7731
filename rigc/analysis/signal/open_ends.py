"""Rig and audio graph -> the units that no instrument reaches, and those from which no sound leaves the rig."""

from __future__ import annotations

from collections.abc import Container

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.model.jacks import AUDIO_OUT, Port
from rigc.model.rig import Rig
from rigc.model.slips.torn_chains import torn_chains
from rigc.model.things import Instrument, Unit
from rigc.model.ways.inner_ways import sinks, sources
from rigc.model.ways.jack_use import with_audio
from rigc.record import Record


class OpenEnds(Record):
    """By name, of units, amps and desks with an audio jack: `unreached` by any instrument, `stuck` where no sound leaves.

    A unit that is only declared in a file which the rig uses, and is used nowhere, is not looked at, nor is a spare, nor one on a chain
    that is torn by a missing jack.
    """

    unreached: tuple[str, ...]
    stuck: tuple[str, ...]


def open_ends(rig: Rig, graph: AudioGraph) -> OpenEnds:
    """In the order in which the units are declared."""
    used, torn = {unit.name for unit in used_units(rig)}, torn_chains(rig)
    spare = _on_the_shelf(rig)
    names = [unit.name for unit in rig.units.values() if _looked_at(rig, unit, used, spare) and unit.name not in torn]
    reached = {port.thing for port in graph.after(sources(rig))}
    leaving = _leaving(rig, graph)
    return OpenEnds(
        tuple(name for name in names if name not in reached), tuple(name for name in names if name not in leaving)
    )


def _looked_at(rig: Rig, unit: Unit, used: Container[str], spare: Container[str]) -> bool:
    here = unit.declared.source.name == rig.head.span.source.name and unit.name not in spare
    return (here or unit.name in used) and any(jack.audio for jack in unit.jacks)


def _on_the_shelf(rig: Rig) -> set[str]:
    """Spares, and units that an as-built block swaps: the one on the board or the one on the shelf is in no chain."""
    swapped = {name for built in rig.as_built for out, into, _ in built.swaps for name in (out, into)}
    return swapped | {spare.thing for spare in rig.spares}


def _leaving(rig: Rig, graph: AudioGraph) -> set[str]:
    """Things from which sound leaves the rig, ends, and what lies between those and a branch of a way that leaves it."""
    out = {port.thing for port in graph.before(sinks(rig))}
    wired = with_audio(rig)
    last = {name for name in {port.thing for port in wired} & rig.units.keys() if not _feeds(rig.units[name], wired)}
    ends = [port for port in wired if port.thing in last]
    branched = graph.after(port for port in graph.onward if port.thing in out)
    return out | last | {port.thing for port in graph.before(ends) & branched}


def _feeds(unit: Unit, wired: Container[Port]) -> bool:
    return any(jack.role == AUDIO_OUT and Port(unit.name, jack.name) in wired for jack in unit.jacks)


def without_chain(rig: Rig) -> list[Instrument]:
    """The instruments and sources of the rig's own file that nothing joins, once something else is chained."""
    joined = {port.thing for each in rig.connections for port in (each.start, each.end)}
    named = {stop.thing for chain in rig.chains for stop in chain.stops}
    elsewhere = {*joined, *named, *(spare.thing for spare in rig.spares), rig.midi_master}
    own = [each for each in rig.instruments.values() if each.declared.source.name == rig.head.span.source.name]
    return [each for each in own if each.name not in elsewhere] if rig.chains else []


COMPUTE = open_ends
