"""Holes of a deck -> the hole schedule: what the shop drills and cuts, where, and what for."""

from __future__ import annotations

from rigc.analysis.deck.zones import zone
from rigc.analysis.routes.deck_holes import PASSAGE, DeckHole
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.deck import Deck
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE
from rigc.reports.figure_cell import figure_cell

COLUMNS = (
    Column("no"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    ZONE,
    Column("diameter or slot", key="size"),
    Column("purpose"),
)
_TO_PART, _TO_PLUG = "to suit the part; measure it", "to suit the plug; measure it"


def hole_table(deck: Deck, holes: tuple[DeckHole, ...]) -> Table:
    """Stated holes, passages of leads, panel jacks, feet. A size that nothing states is not guessed."""
    rows = tuple(_row(deck, hole) for hole in holes)
    caption = f"Hole schedule of deck {deck.name}: x from its left edge, y from the player's edge, seen from above"
    return Table(f"holes-{deck.name}", caption, COLUMNS, rows, empty="no hole is asked for", tick=True)


def _row(deck: Deck, hole: DeckHole) -> Row:
    span = nearest_tenth(hole.x_mm)
    if hole.to_x_mm is not None:
        span += f" to {nearest_tenth(hole.to_x_mm)}"
    where = zone(deck, (hole.x_mm + hole.right_mm) / 2, hole.y_mm)
    texts = (span, nearest_tenth(hole.y_mm), where)
    return Row((Cell(hole.number, strong=True), *map(Cell, texts), _size(hole), Cell(_purpose(hole))))


def _size(hole: DeckHole) -> Cell:
    if hole.open:
        return Cell("open between the rails")
    if hole.size is None:
        return Cell(_TO_PLUG if hole.kind == PASSAGE else _TO_PART)
    return figure_cell(hole.size, with_unit=True)


def _purpose(hole: DeckHole) -> str:
    """What it is for; of leads their numbers, of a slot with the x at which they go through."""
    if not hole.through:
        return hole.purpose
    if len(hole.through) == 1:
        return f"leads: {', '.join(hole.through[0].leads)}"
    return "leads, at x: " + "; ".join(f"{nearest_tenth(each.x_mm)} {', '.join(each.leads)}" for each in hole.through)
