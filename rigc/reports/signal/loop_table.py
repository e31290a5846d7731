"""Loops of switchers, blenders and amps -> the loop table: what each holds, its two leads, who uses it; and where it is found."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import LoopJacks, Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Stop
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.front.sheet_codes import see

COLUMNS = (
    Column("loop", key="loop"),
    Column("jacks"),
    Column("units in order"),
    Column("mono/stereo", folds="{}"),
    Column("send lead"),
    Column("return lead"),
    Column("used by presets"),
    Column("tails", folds="tails: {}"),
    Column("empty?", key="empty", folds="empty: {}"),
)


def loop_table(rig: Rig, leads: Leads) -> Table:
    """One row a loop; a loop of which nothing is said is listed as such."""
    rows = [
        _row(rig, leads, unit, loop)
        for unit in rig.units.values()
        if _wired(rig, unit)
        for loop in sorted(unit.loops, key=lambda each: each.number)
    ]
    return Table("loops", "Loops", COLUMNS, tuple(rows), empty="no loops", tick=True)


def loops_note(rig: Rig) -> Paragraph | None:
    """For who plugs: their leads are steps of the signal, the rest of them is on a sheet; None where there are no loops."""
    if not any(unit.loops and _wired(rig, unit) for unit in rig.units.values()):
        return None
    return Paragraph("loops", (f"Loops, those that are empty, and the presets that use them: {see('loop-table')}.",))


def _wired(rig: Rig, unit: Unit) -> bool:
    wired = any(unit.name in (each.start.thing, each.end.thing) for each in rig.connections)
    return wired or any(use.switcher == unit.name for use in rig.loops)


def _row(rig: Rig, leads: Leads, unit: Unit, loop: LoopJacks) -> Row:
    stops = _stops(rig, unit.name, loop)
    send, back = leads.at(Port(unit.name, loop.send)), leads.at(Port(unit.name, loop.back))
    wired = bool(send or back)
    stereo = any(lead.stereo for lead in (*send, *back))
    return Row(
        (
            Cell(f"{unit.name} {loop.number}"),
            Cell(f"{loop.send}, {loop.back}"),
            Cell(" → ".join(stop.thing for stop in stops) if stops else ""),
            Cell(("stereo" if stereo else "mono") if wired else ""),
            Cell(", ".join(lead.mark for lead in send), strong=True),
            Cell(", ".join(lead.mark for lead in back), strong=True),
            Cell(", ".join(map(str, _presets(rig, unit.name, loop.number)))),
            Cell("yes" if any(_rings(rig.units.get(stop.thing)) for stop in stops or ()) else "no" if stops else ""),
            Cell("not said" if stops is None and not wired else "no" if stops or wired else "empty"),
        )
    )


def _stops(rig: Rig, name: str, loop: LoopJacks) -> tuple[Stop, ...] | None:
    """What a loop holds, also where one chain goes from its send to its return; panels on the way are none of it. None where the source
    does not say."""
    number = loop.number
    for use in rig.loops:
        if (use.switcher, use.number) == (name, number):
            return use.stops
    for chain in rig.chains:
        jacks = [stop.jack if stop.thing == name else None for stop in chain.stops]
        if loop.send in jacks and loop.back in jacks[jacks.index(loop.send) :]:
            between = chain.stops[jacks.index(loop.send) + 1 : jacks.index(loop.back)]
            return tuple(stop for stop in between if stop.thing not in rig.panels)
    for blend in rig.blends:
        for path in blend.paths:
            if blend.unit == name and path.loop == number:
                return path.stops
    return None


def _presets(rig: Rig, name: str, number: int) -> list[int]:
    return [
        preset.number
        for preset in rig.presets.values()
        if any((host, loop) == (name, number) for host, loop, _ in preset_loops(rig, preset))
    ]


def _rings(unit: Unit | None) -> bool:
    return unit is not None and ("tails" in unit.flags or (unit.bypass is not None and unit.bypass.value == "trails"))
