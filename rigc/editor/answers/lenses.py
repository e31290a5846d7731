"""A file -> above each thing the sheets on which it is found."""

from __future__ import annotations

from rigc.edit.spans import span_of
from rigc.record import Record
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import File

SHEETS: dict[type[nodes.Node], tuple[str, ...]] = {
    nodes.Unit: ("unit-schedule", "wiring-sheet"),
    nodes.Supply: ("power-table",),
    nodes.MainsStrip: ("mains-sheet",),
    nodes.Scenario: ("mains-sheet",),
    nodes.Chain: ("signal-flow", "level-table"),
    nodes.Instrument: ("loading-table",),
    nodes.PowerBlock: ("power-table",),
    nodes.Deck: ("deck-drawing",),
    nodes.PlaceBlock: ("deck-drawing",),
    nodes.LeadsBlock: ("cable-list", "cut-list"),
    nodes.MountingBlock: ("mounting-strips",),
    nodes.MidiBlock: ("midi-and-control-map",),
    nodes.ControlBlock: ("midi-and-control-map",),
    nodes.Preset: ("preset-sheet",),
    nodes.SparesBlock: ("spares-list",),
    nodes.TestsBlock: ("test-record",),
    nodes.AsBuilt: ("as-built",),
    nodes.Rig: ("missing-and-assumed-facts",),
}
"""By the class of a statement the sheets to open from it."""


class Lens(Record):
    """A line of its own above a statement: `sheet` is what it opens, `title` what it says."""

    span: Span
    sheet: str
    title: str


def lenses(file: File) -> tuple[Lens, ...]:
    """In the order of the file."""
    found = []
    for statement in file.statements:
        for sheet in SHEETS.get(type(statement), ()):
            found.append(Lens(span_of(statement), sheet, sheet.replace("-", " ")))
    return tuple(found)
