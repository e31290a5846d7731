"""MIDI in figures: `lantxl.midi.length`, `.thrus`; `preset-1.lantxl.sent`, `.wire`; `preset-1.wire`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.control_map import ControlMap
from rigc.analysis.computations.leads import Leads
from rigc.analysis.control.midi_way import MidiWay
from rigc.analysis.control.program_change import ProgramChange, time_ms
from rigc.analysis.reasons.inputs import derived, ours, placed, stated
from rigc.diagnostics.figures import millimetres, plain
from rigc.facts.midi import BYTE_US, PROGRAM_CHANGE
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, STATED, Input, Reason


def midi_figure(rig: Rig, control: ControlMap, leads: Leads) -> Iterator[Reason]:
    """Two reasons for each way to a unit, two for each program that is sent, one for each preset that sends."""
    marks = {lead.mark: lead for lead in leads.all}
    existing = {mark: lead.existing_mm for mark, lead in marks.items() if lead.existing_mm is not None}
    counts: dict[str, int] = {}
    for way in control.ways:
        number = counts[way.unit] = counts.get(way.unit, 0) + 1
        name = f"{way.unit}.midi{'' if number == 1 else f'-{number}'}"
        inputs: list[Input] = []
        for link in way.links:
            if link.lead in existing:
                inputs.append(stated(f"length of {link.lead}", existing[link.lead]))
            elif link.lead:
                known = NOT_KNOWN if link.length is None else millimetres(link.length)
                inputs.append(
                    derived(link.lead, known, "mm", f"{link.lead}.{'route' if link.length is None else 'supplied'}")
                )
        yield _length(name, way, tuple(inputs))
        yield _thrus(rig, name, way)
    for channel in rig.channels:
        here = placed(f"channel of {channel.unit}", str(channel.number), channel.span)
        told, rule = f"{channel.number}, as stated", "a stated number stands"
        yield Reason(f"{channel.unit}.channel", str(channel.number), "", told, (here,), rule, STATED)
    for preset, changes in control.programs.items():
        for change in changes:
            yield from _program(rig, f"preset-{preset}.{change.unit}", change)
        yield from _preset(f"preset-{preset}", changes)


def _length(name: str, way: MidiWay, inputs: tuple[Input, ...]) -> Reason:
    rule = "all leads on the way from the jack that sends"
    if way.length is None:
        return Reason(f"{name}.length", NOT_KNOWN, "mm", "for want of a lead's length", inputs, rule, ARITHMETIC)
    value = millimetres(way.length)
    terms = " + ".join(millimetres(link.length or 0) for link in way.links)
    return Reason(f"{name}.length", value, "mm", f"{terms} = {value}", inputs, rule, ARITHMETIC)


def _thrus(rig: Rig, name: str, way: MidiWay) -> Reason:
    value, passed = str(len(way.thrus)), ", ".join(map(str, way.thrus))
    inputs = []
    for port in way.thrus:
        jack = rig.jack(port)
        inputs.append(placed(str(port), "thru", None if jack is None else jack.span))
    formula = f"{passed or f'straight from {way.links[0].start}'}: {value}"
    return Reason(
        f"{name}.thrus", value, "", formula, tuple(inputs), "thru jacks that are passed, each one stage", "counting"
    )


def _program(rig: Rig, name: str, change: ProgramChange) -> Iterator[Reason]:
    shown = placed(f"program of {change.unit}", str(change.shown), change.span)
    channel = next((each for each in rig.channels if each.unit == change.unit), None)
    told = () if channel is None else (placed(f"channel of {change.unit}", _channel(change), channel.span),)
    yield Reason(
        f"{name}.shown", str(change.shown), "", f"{change.shown}, as stated", (shown,), "a stated number stands", STATED
    )
    rule = "number on the wire = number shown − the number from which the unit counts"
    if change.sent is None or change.first is None:
        why = (
            "no channel"
            if change.channel is None
            else "it is not known from which number the unit counts, or no such program exists"
        )
        yield Reason(f"{name}.sent", NOT_KNOWN, "", why, (shown, *told), rule, "MIDI 1.0")
        return
    formula = f"{change.shown} − {change.first} = {change.sent}; bytes {change.hexadecimal}"
    yield Reason(
        f"{name}.sent", str(change.sent), "", formula, (shown, *told, ours(PROGRAM_CHANGE)), rule, PROGRAM_CHANGE.source
    )
    value = f"{time_ms((change,)):.2f}"
    formula = f"{len(change.octets)} × {plain(BYTE_US.value)} µs / 1000 = {value}"
    yield Reason(f"{name}.wire", value, "ms", formula, (ours(BYTE_US),), "bytes × time of a byte", BYTE_US.source)


def _channel(change: ProgramChange) -> str:
    counts = "" if change.first is None else f", programs from {change.first}"
    return f"{change.channel}{counts}"


def _preset(name: str, changes: tuple[ProgramChange, ...]) -> Iterator[Reason]:
    if not any(change.channel is not None for change in changes):
        return
    value = f"{time_ms(changes):.2f}"
    sent = {change.octets: change for change in changes if change.octets}
    inputs = tuple(
        derived(each.unit, f"{time_ms((each,)):.2f}", "ms", f"{name}.{each.unit}.wire") for each in sent.values()
    )
    formula = f"{' + '.join(each.value for each in inputs) or '0'} = {value}"
    rule = "all messages of the preset, one after the other; what is the same for two units is sent once"
    yield Reason(f"{name}.wire", value, "ms", formula, inputs, rule, BYTE_US.source)


REASONS = midi_figure
