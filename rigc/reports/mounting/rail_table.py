"""Rails and their tape -> the table of rails, counted from the front."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mounting.rail_tape import RailTape
from rigc.model.deck import Deck, Rail
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell

_COLUMNS = (
    Column("rail"),
    Column("rail from y to y", "mm", key="metal"),
    Column("x", "mm", number=True),
    Column("y", "mm"),
    Column("tape", "mm", number=True),
    Column("of"),
)


def rail_table(rig: Rig, tape: RailTape) -> Table | None:
    """A row for each taped rail of the decks in use, then those that bear no tape; None if no rail is taped."""
    several = sum(1 for pieces in tape.tapes.values() if pieces) > 1
    rows = tuple(row for deck in tape.tapes for row in _rails(rig.decks[deck], tape, several))
    caption = "Rails and the tape on them, counted from the front"
    return Table("rail_tape", caption, _COLUMNS, rows) if any(tape.tapes.values()) else None


def _rails(deck: Deck, tape: RailTape, several: bool) -> Iterator[Row]:
    kinds = tape.kinds[deck.name]
    taped = [rail for rail in deck.rails if rail.tape_front_mm is not None]
    pieces = zip(taped, tape.of(deck.name), tape.sizes[deck.name], strict=False)
    for number, (rail, piece, size) in enumerate(pieces, 1):
        yield Row(
            (
                Cell(f"{deck.name} {number}" if several else str(number)),
                Cell(_metal(rail)),
                figure_cell(size.x),
                Cell(f"{piece.y_mm:g} to {piece.rear_mm:g}"),
                figure_cell(size.size),
                Cell(", ".join(filter(None, (kinds[number - 1], "above and below" if rail.both_faces else "")))),
            )
        )
    for rail in deck.rails:
        if rail.tape_front_mm is None:
            yield Row((Cell("no tape"), Cell(_metal(rail)), *(Cell(""),) * 4))


def _metal(rail: Rail) -> str:
    return f"{rail.front_mm:g} to {rail.rear_mm:g}"
