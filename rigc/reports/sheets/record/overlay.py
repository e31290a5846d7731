"""Overlay: the deck of the revision before under this one, each change with a number."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.analysis.deck.zones import zone, zone_of
from rigc.analysis.previous import Previous, follows
from rigc.analysis.results import Results
from rigc.model.deck import Deck
from rigc.reports.content import Block, Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.deck.chosen_places import place_cell
from rigc.reports.deck.zone_column import ZONE
from rigc.reports.drawings.deck.sheet_view import view_of
from rigc.reports.drawings.shapes import Point

if TYPE_CHECKING:
    from rigc.reports.drawings.overlay.marks import Mark

NAME, TITLE = "overlay", "Overlay"
COLUMNS = (
    Column("mark"),
    Column("what"),
    Column("change"),
    ZONE,
    Column("seen from"),
    Column("from x", "mm", number=True),
    Column("from y", "mm", number=True),
    Column("to x", "mm", number=True),
    Column("to y", "mm", number=True),
)


def overlay(results: Results, previous: Previous) -> Sheet | NoSheet:
    """For each deck in use a plan from above, one from below if something changed there, and the table of the changes."""
    if previous.results is None:
        return NoSheet(NAME, TITLE, "This revision states none that it follows, so there is nothing to lay it over.")
    blocks: list[Block] = []
    used = {place.deck or _first(results) for place in results.rig.places.values()}
    for deck in results.rig.decks.values():
        if deck.name in used:
            blocks += _blocks(previous.results, results, deck)
    if not blocks:
        blocks.append(Paragraph("nothing", ("No deck has a thing on it yet: state a deck and places.",)))
    return Sheet(NAME, TITLE, "who changes the board, and who checks it afterwards", tuple(blocks), landscape=True)


def _first(results: Results) -> str:
    return "" if results.rig.deck is None else results.rig.deck.name


def _blocks(before: Results, after: Results, deck: Deck) -> list[Block]:
    if deck.width_mm is None or deck.depth_mm is None:
        line = f"The size of deck '{deck.name}' is not stated: no drawing of it."
        return [Paragraph(f"unknown-{deck.name}", (line,))]
    from rigc.reports.drawings.overlay.marks import marks  # most rigs follow none
    from rigc.reports.drawings.overlay.overlay import overlay_drawing

    found = marks(before, after, deck)
    size = deck.width_mm.value, deck.depth_mm.value
    sides = [False, *([True] if any(mark.under for mark in found) else [])]
    drawings = [overlay_drawing(before, after, deck, view_of(*size, below=below), found) for below in sides]
    return [*drawings, _table(before, after, deck, found)]


def _table(before: Results, after: Results, deck: Deck, found: tuple[Mark, ...]) -> Table:
    return Table(
        f"changes-{deck.name}",
        f"Changes on deck {deck.name}, {before.rig.head.letter} to {after.rig.head.letter}: a thing's front-left corner, a jack, a "
        "hole, the end of a lead that moves",
        COLUMNS,
        tuple(_row(after, deck, mark) for mark in found),
        empty="nothing on this deck changed its place",
        tick=True,
    )


def _row(after: Results, deck: Deck, mark: Mark) -> Row:
    new = mark.bodies[1]
    place = None if new is None else after.rig.places.get(new.thing)
    return Row(
        (
            Cell(mark.label, strong=True),
            Cell(mark.what),
            Cell(mark.change),
            Cell(_zone(deck, mark)),
            Cell("below" if mark.under else "above"),
            *map(Cell, _figures(mark.old)),
            *(place_cell(text, place) for text in _figures(mark.new)),
        )
    )


def _zone(deck: Deck, mark: Mark) -> str:
    """Where it is now, or was; of a lead from end to end."""
    body, way = mark.bodies[1] or mark.bodies[0], mark.ways[1] or mark.ways[0]
    if body is not None:
        return zone_of(deck, body)
    if way is not None:
        return " → ".join(dict.fromkeys(zone(deck, jack.x_mm, jack.y_mm) for jack in way.jacks))
    point = mark.new or mark.old
    return "" if point is None else zone(deck, *point)


def _figures(point: Point | None) -> tuple[str, str]:
    return ("", "") if point is None else (f"{point[0]:g}", f"{point[1]:g}")


PLACE = 11
SHEET = overlay
THERE = follows
