"""An audio unit is not reached from any instrument, or sound from it reaches no amp, desk or panel jack.

Why it matters: nothing is heard from there on, and the fault is looked for on stage.
What to do: wire the open side, or take the unit out of the rig; one that travels as a spare is named in the spares block.
Source: arithmetic on the stated chains. A unit that is wired to no audio output is an end (a tuner on a branch): it
needs to be reached only, but is no place where sound leaves the rig. A unit that is only declared in a file which
the rig uses, and is used nowhere, or that is a spare, is not looked at.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence

from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.analysis.signal.loops_to_fill import LoopsToFill, into_loops
from rigc.analysis.signal.open_ends import OpenEnds, without_chain
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.inner_ways import main_inputs, main_outputs
from rigc.model.ways.jack_use import with_audio
from rigc.model.wishes import Stop

KIND = Kind(
    "open-chain",
    Level.ERROR,
    __doc__,
    "every audio unit is reached from an input and reaches an output",
    "arithmetic on the stated chains",
)


def open_chain(rig: Rig, graph: AudioGraph, ends: OpenEnds, fill: LoopsToFill) -> Iterator[Diagnostic]:
    """One finding for each group of units that are wired to each other and open on the same side; none on a torn chain.

    Units that stand in no chain at all are told together: one loop or one chain is missing; where presets switch in loops
    that hold nothing, that is told of the loops (unsettled-loop). An amp that nothing reaches is told with
    the one chain that stops before it.
    """
    sides = {name: (name in ends.unreached, name in ends.stuck) for name in (*ends.unreached, *ends.stuck)}
    names = [name for name in rig.units if name in sides]
    amps = [name for name in names if sides[name] == (True, False) and rig.units[name].ends]
    stopping = list(graph.islands(name for name in names if sides[name] == (False, True)))
    forgotten = amps[0] if len(amps) == len(stopping) == 1 else None
    wired = {port.thing for port in with_audio(rig)}
    loose = [name for name in names if sides[name] == (True, True) and name not in wired]
    if loose and not (fill.told_together and set(loose) <= set(fill.loose)):
        yield _loose(rig, graph, [rig.units[name] for name in loose])
    for side in ((True, True), (True, False), (False, True)):
        for group in graph.islands(name for name in names if sides[name] == side and name not in (forgotten, *loose)):
            units = [rig.units[name] for name in group]
            if side == (False, True):
                yield _stops(rig, graph, units, forgotten)
            else:
                yield _told(graph, units, *side, (*_begin(rig, group), *_reach(rig, units)))


def _free_loops(rig: Rig) -> list[tuple[str, int]]:
    """The loops of switchers on a chain that hold nothing yet."""
    wired = with_audio(rig)
    hosts = [unit for unit in rig.units.values() if unit.kind == "unit" and unit.loops]
    return [
        (host.name, loop.number)
        for host in hosts
        if any(port.thing == host.name for port in wired)
        for loop in host.loops
        if not {Port(host.name, loop.send), Port(host.name, loop.back)} & wired
        and not any((use.switcher, use.number) == (host.name, loop.number) for use in rig.loops)
    ]


def _told(graph: AudioGraph, group: list[Unit], no_input: bool, no_output: bool, mends: tuple[Mend, ...]) -> Diagnostic:
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
        label=f"{'both sides' if no_output else 'input side'} open",
        also=tuple(Label(unit.declared, "open with it") for unit in group[1:]),
        mends=mends,
        help=_help(graph, group),
    )


def _begin(rig: Rig, group: Sequence[str]) -> tuple[Mend, ...]:
    """A chain that begins at one of them is begun by an instrument that stands in no chain."""
    first = [chain.stops[0] for chain in rig.chains if chain.stops[0].thing in group and chain.stops[0].jack is None]
    return tuple(
        Mend(
            f"begin the chain with '{each.name}': `{each.name} -> {stop.thing}`",
            (Replace(stop.span, f"{each.name} -> {stop.span.text}"),),
        )
        for stop in first[:1]
        for each in without_chain(rig)
    )


def _reach(rig: Rig, group: list[Unit]) -> tuple[Mend, ...]:
    """An amp that nothing reaches is led to from each chain that stops at an output."""
    if len(group) > 1 or group[0].kind == "unit":
        return ()
    wired = {each.start for each in rig.connections if each.signal == "audio"}
    stops = [chain.stops[-1] for chain in rig.chains if _open_output(rig, chain.stops[-1].thing, wired)]
    return tuple(_go_on(stop, group[0].name) for stop in stops[:3])


def _open_output(rig: Rig, name: str, wired: Container[Port]) -> bool:
    unit = rig.units.get(name)
    outs = main_outputs(unit) if unit is not None and unit.kind == "unit" else []
    return bool(outs) and not any(out in wired for out in outs)


def _go_on(stop: Stop, amp: str) -> Mend:
    return Mend(f"go on from '{stop.thing}': `-> {amp}`", (Replace(stop.span.behind, f" -> {amp}"),))


def _loose(rig: Rig, graph: AudioGraph, group: list[Unit]) -> Diagnostic:
    """Units without a lead, with the free loops of a switcher: one for all of them, or one for each."""
    names, free = [unit.name for unit in group], _free_loops(rig)
    mends = [into_loops([(free[0], names)])] if free and all(unit.kind == "unit" for unit in group) else []
    if mends and 1 < len(names) <= len(free):
        mends.append(into_loops([(loop, [name]) for loop, name in zip(free, names, strict=False)]))
    told = _told(graph, group, True, True, tuple(mends) or _reach(rig, group))
    help = told.help
    if all(unit.kind == "unit" for unit in group) and len(names) == 1:
        help += f"; if it travels as a spare, write `{names[0]}` into the spares block"
    elif len(names) > 1:
        help = "bring them into a chain, or remove the units; spares are named in the spares block"
    return told if help == told.help else told.replace(help=help)


def _help(graph: AudioGraph, group: list[Unit]) -> str:
    """Names the jack where the way begins."""
    wired = {end for start, end in graph.ways if start.thing != end.thing}
    open_jacks = [port for unit in group for port in main_inputs(unit) if port not in wired]
    if not open_jacks:
        return "bring it into a chain" if len(group) == 1 else "bring them into a chain"
    return f"bring {open_jacks[0]} into a chain, or remove {'the unit' if len(group) == 1 else 'the units'}"


def _stops(rig: Rig, graph: AudioGraph, group: list[Unit], forgotten: str | None) -> Diagnostic:
    """A way that ends before it leaves the rig, told where it ends."""
    names = [unit.name for unit in group]
    wired = {start for start, end in graph.ways if start.thing != end.thing}
    onward = sorted({port for unit in group for port in graph.after(_ports(unit))}, key=str)
    jacks = [port for port in onward if port not in wired and not graph.onward[port]]
    chain = next((each for port in jacks for each in rig.chains if each.stops[-1].thing == port.thing), None)
    if chain is None:
        return KIND.at(
            group[0].declared,
            f"{listed(names)} {'reaches' if len(names) == 1 else 'reach'} no amp, desk or panel jack",
            subject=tuple(names),
            label="output side open",
            also=tuple(Label(unit.declared, "open with it") for unit in group[1:]),
            help=f"bring {jacks[0]} into a chain, or remove {'the unit' if len(names) == 1 else 'the units'}"
            if jacks
            else "bring it into a chain",
        )
    stop = chain.stops[-1]
    amps = [forgotten] if forgotten else [unit.name for unit in rig.units.values() if unit.ends]
    return KIND.at(
        stop.span,
        f"the chain stops at '{stop.thing}' and reaches no amp, desk or panel jack",
        subject=(*names, *((stop.thing,) if stop.thing not in names else ())),
        label="the sound ends here",
        also=tuple(Label(rig.units[name].declared, "nothing reaches it") for name in (forgotten,) if name),
        mends=tuple(_go_on(stop, amp) for amp in amps[:3]),
        help="" if amps else f"declare the amp, and go on from '{stop.thing}'",
    )


def _ports(unit: Unit) -> list[Port]:
    return [*main_inputs(unit), *main_outputs(unit)]


CHECK = open_chain
