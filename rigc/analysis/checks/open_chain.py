"""An audio unit is not reached from any instrument, or sound from it reaches no amp, desk or panel jack.

Why it matters: nothing is heard from there on, and the fault is looked for on stage.
What to do: wire the open side, or take the unit out of the rig.
Source: arithmetic on the stated chains. A unit that is wired to no audio output is an end (a tuner on a branch): it
needs to be reached only, but is no place where sound leaves the rig. A unit that is only declared in a file which
the rig uses, and is used nowhere, is not looked at.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.audio_graph import AudioGraph
from rigc.analysis.power.used_units import used_units
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.inner_ways import main_inputs, main_outputs, sinks, sources
from rigc.model.jacks import AUDIO_OUT, Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.torn_chains import torn_chains

KIND = Kind(
    "open-chain",
    Level.ERROR,
    __doc__,
    "every audio unit is reached from an input and reaches an output",
    "arithmetic on the stated chains",
)


def open_chain(rig: Rig, graph: AudioGraph) -> Iterator[Diagnostic]:
    """One finding for each group of units that are wired to each other and open on the same side; none on a torn chain."""
    used = used_units(rig)
    torn = torn_chains(rig)
    units = {unit.name: unit for unit in rig.units.values() if _looked_at(rig, unit, used) and unit.name not in torn}
    reached = {port.thing for port in graph.after(sources(rig))}
    leaving = _leaving(rig, graph)
    sides = {name: (name not in reached, name not in leaving) for name in units}
    for side in ((True, True), (True, False), (False, True)):
        for group in graph.islands(name for name in units if sides[name] == side):
            yield _told(graph, [units[name] for name in group], *side)


def _looked_at(rig: Rig, unit: Unit, used: tuple[Unit, ...]) -> bool:
    here = unit.declared.source.name == rig.head.span.source.name and unit.name not in _swapped(rig)
    return (here or unit in used) and any(jack.audio for jack in unit.jacks)


def _swapped(rig: Rig) -> set[str]:
    """Units that an as-built block swaps: the one on the board or the one on the shelf is in no chain."""
    return {name for built in rig.as_built for out, into, _ in built.swaps for name in (out, into)}


def _leaving(rig: Rig, graph: AudioGraph) -> set[str]:
    """Things from which sound leaves the rig, ends, and what lies between those and a branch of a way that leaves it."""
    out = {port.thing for port in graph.before(sinks(rig))}
    wired = {port for each in rig.connections if each.signal == "audio" for port in (each.start, each.end)}
    ends = [port for port in wired if port.thing in rig.units and not _feeds(rig.units[port.thing], wired)]
    branched = graph.after(port for port in graph.digraph if port.thing in out)
    return out | {port.thing for port in ends} | {port.thing for port in graph.before(ends) & branched}


def _feeds(unit: Unit, wired: set[Port]) -> bool:
    return any(jack.role == AUDIO_OUT and Port(unit.name, jack.name) in wired for jack in unit.jacks)


def _told(graph: AudioGraph, group: list[Unit], no_input: bool, no_output: bool) -> Diagnostic:
    names, one = [unit.name for unit in group], len(group) == 1
    faults = []
    if no_input:
        faults.append(f"{'is' if one else 'are'} not reached from any instrument")
    if no_output:
        faults.append(f"{'reaches' if one else 'reach'} no amp, desk or panel jack")
    return KIND.at(
        group[0].declared,
        f"{listed(names)} {' and '.join(faults)}",
        subject=tuple(names),
        label=f"{_side(no_input, no_output)} open",
        also=tuple(Label(unit.declared, "open with it") for unit in group[1:]),
        help=_help(graph, group, no_input),
    )


def _side(no_input: bool, no_output: bool) -> str:
    return "both sides" if no_input and no_output else "input side" if no_input else "output side"


def _help(graph: AudioGraph, group: list[Unit], no_input: bool) -> str:
    """Names the jack where the way begins or ends."""
    if no_input:
        wired = {end for start, end in graph.ways if start.thing != end.thing}
        open_jacks = [port for unit in group for port in main_inputs(unit) if port not in wired]
    else:
        wired = {start for start, end in graph.ways if start.thing != end.thing}
        onward = {port for unit in group for port in graph.after(_ports(unit))}
        open_jacks = [
            port for port in sorted(onward, key=str) if port not in wired and graph.digraph.out_degree(port) == 0
        ]
    if not open_jacks:
        return "bring it into a chain" if len(group) == 1 else "bring them into a chain"
    return f"bring {open_jacks[0]} into a chain, or remove {'the unit' if len(group) == 1 else 'the units'}"


def _ports(unit: Unit) -> list[Port]:
    return [*main_inputs(unit), *main_outputs(unit)]


CHECK = open_chain
