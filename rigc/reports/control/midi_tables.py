"""Control map -> the MIDI tables: who listens where and by which way; how each link is wired."""

from __future__ import annotations

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_channel import in_runs
from rigc.analysis.control.midi_way import MidiLink, MidiWay
from rigc.analysis.control.program_change import ProgramChange
from rigc.analysis.leads.conductors_of_lead import midi_conductors
from rigc.model.jacks import Jack
from rigc.model.rig import Rig
from rigc.model.ways.conductors import named
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.cells import stated
from rigc.traced.figure import AnyFigure, Lacking

_MAP = (
    Column("unit"),
    Column("firmware", folds="firmware {}"),
    Column("channel", number=True),
    Column("programs count from", key="program_offset"),
    Column("messages"),
    Column("leads from the sender", key="leads"),
    Column("thru/split port", key="port"),
    Column("thru stages", number=True),
    Column("length", "mm", number=True),
    Column("clock source", folds="clock {}"),
)
_LINKS = (
    Column("lead"),
    Column("from"),
    Column("to"),
    Column("jacks", folds="{}"),
    Column("wired", folds="{}"),
    Column("length", "mm", number=True),
)


def map_table(rig: Rig, control: ControlMap) -> Table:
    """A row for the master, for each way to a unit, and for each unit with a channel that no way reaches."""
    rows = [_row(rig, control, rig.midi_master, None)] if rig.midi_master is not None else []
    for way in control.ways:
        if way.unit != rig.midi_master:
            rows.append(_row(rig, control, way.unit, way))
    reached = {way.unit for way in control.ways}
    rows += [
        _row(rig, control, each.unit, None) for each in rig.channels if each.unit not in {*reached, rig.midi_master}
    ]
    return Table("midi_map", "MIDI map", _MAP, tuple(rows), empty="")


def link_table(rig: Rig, control: ControlMap) -> Table:
    """A row for each MIDI link: what is plugged where, and how tip, ring and pins are joined."""
    rows = tuple(_link(rig, link) for link in control.links)
    return Table("midi_leads", "MIDI leads", _LINKS, rows, empty="", tick=bool(rows))


def _row(rig: Rig, control: ControlMap, unit: str, way: MidiWay | None) -> Row:
    channel = next((each for each in rig.channels if each.unit == unit), None)
    listens = unit in rig.units and any(jack.audio for jack in rig.units[unit].jacks) and unit != rig.midi_master
    if channel is None:
        number, first = Cell("", mark="not stated" if listens else ""), Cell("")
    else:
        number = Cell(
            control.channels[unit].text, strong=True, mark="shared deliberately" if channel.deliberate else ""
        )
        first = Cell(
            "" if channel.first is None else str(channel.first), mark="not stated" if channel.first is None else ""
        )
    return Row(
        (
            Cell(unit),
            stated(rig.things[unit].papers.firmware),
            number,
            first,
            Cell(_messages(rig, control, unit)),
            *_way(rig, unit, way),
            _clock(rig, control, unit),
        )
    )


def _way(rig: Rig, unit: str, way: MidiWay | None) -> tuple[Cell, ...]:
    if way is None:
        told = Cell("master") if unit == rig.midi_master else Cell("", mark="no MIDI lead")
        return told, Cell(""), Cell(""), Cell("")
    leads = ", ".join(link.lead or "no lead" for link in way.links)
    ports = ", ".join(map(str, way.thrus)) or f"straight from {way.links[0].start}"
    return Cell(leads, strong=True), Cell(ports), figure_cell(way.stages), _length(way.leads)


def _messages(rig: Rig, control: ControlMap, unit: str) -> str:
    """What the presets send to it, and the clock; of the master, to how many units it sends."""
    presets = sorted(number for number, sent in control.programs.items() if any(_sent(each, unit) for each in sent))
    words = [f"program change in {'preset' if len(presets) == 1 else 'presets'} {in_runs(presets)}"] if presets else []
    clock = _stated_clock(rig, unit)
    words += ["sends clock" if clock == "sends" else "clock"] if clock else []
    if unit == rig.midi_master:
        words.insert(0, "sends program changes" if any(control.programs.values()) else "")
    return "; ".join(word for word in words if word)


def _sent(change: ProgramChange, unit: str) -> bool:
    return change.unit == unit and change.channel is not None


def _stated_clock(rig: Rig, name: str) -> str | None:
    """`follows` or `sends`; None where nothing is said, as of a source, which has no such statement."""
    return rig.units[name].clock if name in rig.units else None


def _clock(rig: Rig, control: ControlMap, unit: str) -> Cell:
    """Whose clock it follows: the master's, or that of another unit stated to send one, if its messages arrive."""
    senders = {*(name for name, each in rig.units.items() if each.clock == "sends"), rig.midi_master}
    if unit in senders:
        return Cell("its own")
    if _stated_clock(rig, unit) is None:
        return Cell("")
    heard = [name for name in rig.things if name in senders & control.heard(unit)]
    return Cell(", ".join(heard), mark="" if heard else "no sender reaches it")


def _link(rig: Rig, link: MidiLink) -> Row:
    start, end = rig.jack(link.start), rig.jack(link.end)
    assert start is not None and end is not None
    jacks = f"{_jack(start)} to {_jack(end)}"
    wired = midi_conductors(start, end, link.crossover, link.shield_at_both)
    types = [jack.midi_form for jack in (start, end) if jack.midi_form in ("a", "b")]
    unlike = "TYPES DIFFER" if len(set(types)) > 1 and not link.crossover else ""
    mark = unlike if wired else "type not stated"
    return Row(
        (
            Cell(link.lead, strong=True),
            Cell(str(link.start)),
            Cell(str(link.end)),
            Cell(jacks),
            Cell(wired, strong=link.crossover, mark=mark),
            Cell("no lead") if link.supplied is None else _length(link.supplied),
        )
    )


def _length(length: AnyFigure) -> Cell:
    return Cell("", mark="not known") if isinstance(length, Lacking) else figure_cell(length)


def _jack(jack: Jack) -> str:
    forms = {"a": " type A", "b": " type B", "tip": ", tip only"}
    return named(jack.connector) + forms.get(jack.midi_form or "", "")
