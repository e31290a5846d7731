"""Places that the source does not state -> the mark of their figures, and a line that tells how to keep them."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Paragraph

MARK = "chosen"


def chosen(rig: Rig, things: Iterable[str]) -> tuple[str, ...]:
    """Those of the things whose places were chosen, in their order."""
    return tuple(thing for thing in things if thing in rig.places and rig.places[thing].chosen)


def place_cell(text: str, place: Place | None) -> Cell:
    """The text of a figure that follows from a place, as its cell; an empty one has nothing to mark."""
    return marked(Cell(text), place)


def marked(cell: Cell, place: Place | None) -> Cell:
    """A cell whose figure follows from a place, marked where the place was chosen."""
    return cell.replace(mark=MARK) if cell.text and place is not None and place.chosen else cell


def chosen_note(rig: Rig, things: Iterable[str]) -> tuple[Paragraph, ...]:
    """One paragraph for a sheet that shows places; none where all of them are stated."""
    names = chosen(rig, things)
    return (Paragraph("chosen", (chosen_line(names),), heading="Chosen places"),) if names else ()


def chosen_line(names: tuple[str, ...]) -> str:
    """What is chosen, and what keeps it."""
    places, they = ("The place", "it") if len(names) == 1 else ("The places", "them")
    return (
        f"{places} of {', '.join(names)} {'was' if len(names) == 1 else 'were'} chosen, not stated, and may move when the "
        f"source changes: `rigc pin` writes {they} into the source, and so keeps {they}."
    )
