"""Outlines -> the table of places: where each thing stands, as the plan shows it."""

from __future__ import annotations

from rigc.analysis.computations.placement import Outline, Placement
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

COLUMNS = (
    Column("thing"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    Column("width", "mm", number=True),
    Column("depth", "mm", number=True),
    Column("height", "mm", number=True),
    Column("turned", "°", number=True),
    Column("stands"),
)


def place_table(rig: Rig, deck: Deck, placement: Placement) -> Table:
    """The front-left corner, size after turning, and whether it stands on top, on a tier, or hangs below."""
    bodies = [body for body in placement.outlines.values() if body.deck == deck.name]
    caption = f"Places on deck {deck.name}: front-left corners from the deck's front-left corner"
    return Table(f"places-{deck.name}", caption, COLUMNS, tuple(_row(rig, body) for body in bodies), tick=True)


def _row(rig: Rig, body: Outline) -> Row:
    place = rig.places[body.thing]
    figures = (body.x_mm, body.y_mm, body.width_mm, body.depth_mm)
    height = "not stated" if body.height_mm is None else f"{body.height_mm:g}"
    stands = "below" if body.under else f"on tier {place.tier}" if place.tier else "on top"
    texts = (body.thing, *(f"{figure:g}" for figure in figures), height, f"{place.turned + place.skew_deg:g}", stands)
    return Row(tuple(map(Cell, texts)))
