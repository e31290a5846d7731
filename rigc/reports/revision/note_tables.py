"""Field notes -> their table, and a blank form for the next one."""

from __future__ import annotations

from rigc.model.records import FieldNote
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.revision.swap_tables import swaps
from rigc.reports.tests.reading_cells import BY, DATE

_NOTES = (
    Column("note", number=True),
    DATE,
    Column("what"),
    BY,
    Column("state"),
    Column("found"),
    Column("fitted"),
    Column("signed", least_mm=25),
)
_FORM = (
    "date, place, show",
    "unit found (name, serial number)",
    "unit fitted (name, serial number)",
    "why",
    "before plugging in: footprint, jack sides; fits its strip?",
    "before plugging in: voltage, polarity, current, by label and by meter",
    "outlet, its voltage switch, its free mA",
    "leads used again, leads new or shortened",
    "presets and MIDI channels changed",
    "crew card corrected in red and initialled",
    "abroad: customs list, item and serial number changed",
    "tested how, readings",
    "done by, signed",
    "told to the builder on, by",
)


def note_table(rig: Rig) -> Table:
    """A row for each note: what, by whom, whether the design has taken it up, which unit went and which came."""
    rows = tuple(_row(rig, note) for note in sorted(rig.field_notes, key=lambda each: each.number))
    return Table("notes", "Notes from the road", _NOTES, rows, empty="")


def form_table(rig: Rig) -> Table:
    """A form to fill in by hand, numbered on from the last note."""
    number = max((note.number for note in rig.field_notes), default=0) + 1
    columns = (Column("what"), Column("to write in", key="written", least_mm=105))
    rows = tuple(Row((Cell(what), Cell(""))) for what in _FORM)
    return Table("form", f"Field note no. {number} (to fill in)", columns, rows, tick=True)


def _row(rig: Rig, note: FieldNote) -> Row:
    mine = [each for each in swaps(rig) if each.note == note.number]
    return Row(
        (
            Cell(str(note.number), strong=True),
            Cell(note.date),
            Cell(note.text),
            Cell(note.by),
            _state(rig, note),
            Cell("\n".join(each.found for each in mine)),
            Cell("\n".join(each.fitted for each in mine)),
            Cell(""),
        )
    )


def _state(rig: Rig, note: FieldNote) -> Cell:
    if note.open_at(rig.head.date):
        return Cell("", mark="OPEN", strong=True)
    return Cell("folded" if note.state else f"older than revision {rig.head.letter}")
