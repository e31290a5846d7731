"""MIDI in figures: `lantxl.midi.length`, `.thrus`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.control_map import ControlMap
from rigc.analysis.computations.leads import Leads
from rigc.analysis.control.midi_way import MidiWay
from rigc.analysis.reasons.inputs import derived, placed, stated
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, Input, Reason


def midi_figure(rig: Rig, control: ControlMap, leads: Leads) -> Iterator[Reason]:
    """Two reasons for each way to a unit."""
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


REASONS = midi_figure
