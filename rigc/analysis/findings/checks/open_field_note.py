"""A field note is newer than the revision, or is stated `open`.

Why it matters: the next revision would be designed against a board that no longer exists.
What to do: bring the design up to what was done on the road, and write `folded` behind the note. If it was undone since,
say so in its text, and write `folded` all the same.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.records import FieldNote
from rigc.model.rig import Rig

KIND = Kind(
    "open-field-note",
    Level.WARNING,
    __doc__,
    "every field note is folded into a revision of its day or later",
    "common practice, no source",
)


def open_field_note(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each open note, with the swap that names it."""
    for note in rig.field_notes:
        if note.open_at(rig.head.date) or note.date > rig.head.date:
            yield _told(rig, note)


def _told(rig: Rig, note: FieldNote) -> Diagnostic:
    head = rig.head
    newer = f"is newer than revision {head.letter} of {head.date} and not folded into it"
    if note.date > head.date and note.state == "folded":
        newer = f"is stated folded, but is newer than revision {head.letter} of {head.date}"
    why = newer if note.date > head.date else f"is stated open; revision {head.letter} is of {head.date}"
    swaps = [(out, into) for built in rig.as_built for out, into, number in built.swaps if number == note.number]
    names = tuple(name for pair in swaps for name in pair)
    swapped = "; ".join(f"'{into}' stands in the place of '{out}'" for out, into in swaps)
    return KIND.at(
        note.span,
        f"field note {note.number} of {note.date} {why}",
        subject=(head.name, str(note.number), *names),
        label="not in the design",
        also=tuple(
            Label(built.span, "its swap stands in this block")
            for built in rig.as_built
            if any(number == note.number for _, _, number in built.swaps)
        ),
        note=swapped,
        help="fold it into the design and write `folded` behind it, with a revision of its day or later",
    )


CHECK = open_field_note
