"""Outlines -> the table of places: where each thing stands, as the plan shows it."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.deck.zones import zone_of
from rigc.analysis.stores.pull_list import FIXINGS
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.chosen_places import place_cell
from rigc.reports.deck.zone_column import ZONE

COLUMNS = (
    Column("thing"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    ZONE,
    Column("width", "mm", number=True),
    Column("depth", "mm", number=True),
    Column("height", "mm", number=True),
    Column("turned", "°", number=True, folds="turned {}"),
    Column("stands", folds="{}"),
    Column("held by", folds="held by {}"),
)


def place_table(rig: Rig, deck: Deck, placement: Placement) -> Table:
    """The front-left corner, the zone of the middle, size after turning, and whether it stands on top, on a tier, or hangs below; chosen corners are
    marked. What is bolted, screwed or in brackets has holes that no fact tells: they are marked from the thing itself."""
    bodies = [body for body in placement.outlines.values() if body.deck == deck.name]
    caption = f"Places on deck {deck.name}: front-left corners from the deck's front-left corner"
    return Table(f"places-{deck.name}", caption, COLUMNS, tuple(_row(rig, deck, body) for body in bodies), tick=True)


def _row(rig: Rig, deck: Deck, body: Outline) -> Row:
    place = rig.places[body.thing]
    corner = tuple(place_cell(nearest_tenth(figure), place) for figure in (body.x_mm, body.y_mm))
    height = "not stated" if body.height_mm is None else nearest_tenth(body.height_mm)
    fixing = rig.mounting.fixing_of(body.thing)
    stands = "below" if body.under else f"on tier {place.tier}" if place.tier else "on top"
    stands += f", jacks to the {place.jacks}" if place.jacks else ""
    texts = (
        nearest_tenth(body.width_mm),
        nearest_tenth(body.depth_mm),
        height,
        f"{place.turned + place.skew_deg:g}",
        stands,
        "" if fixing is None else f"{FIXINGS[fixing]}, their holes marked from it",
    )
    where = place_cell(zone_of(deck, body), place)
    return Row((Cell(body.thing), *corner, where, *map(Cell, texts)))
