"""Plan at full size: tiles for A4 and Letter, to stand on with shoes before anything is cut."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import Kept
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.routes.deck_holes import DeckHole, DeckHoles
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.reports.content import Block, Paragraph, Sheet
from rigc.reports.deck.chosen_places import chosen_note
from rigc.reports.drawings.deck.full_size import full_size
from rigc.reports.drawings.deck.tile_map import tile_map
from rigc.reports.drawings.deck.tiles import tiles

_HOW = (
    "Print at 100 %, with no fitting to the page. Measure both rulers of each page, from end to end: else the print is false.",
    "Cut along the grey frame on one side of each join, lay that edge on the neighbour's dotted line, cross on cross, and tape.",
    "A cross with H and a number is the centre of a hole, numbers as in the hole schedule; Ø is its diameter in mm.",
    "Crossed rings are foot switches, plain ones knobs; plugs are dashed, drop lines dash and dot.",
    "Stand on it in the shoes that are worn on stage: is each switch met without the next one?",
)

_BESIDE_MM = 50.0


def plan_full_size(rig: Rig, placement: Placement, plugs: PlugBodies, holes: DeckHoles, kept: Kept) -> Sheet:
    """How to join the tiles, a map of them, and the tiles; a sentence where no deck has a size."""
    blocks: list[Block] = [Paragraph("joining", _HOW, heading="How to print and join")]
    for deck in rig.decks.values():
        bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
        if bodies and deck.width_mm is not None and deck.depth_mm is not None:
            size = (deck.width_mm.value, deck.depth_mm.value)
            laid = tiles(*size)
            names = {body.thing for body in bodies}
            standing = [(plug.room(), plug) for plug in plugs.all if plug.thing in names]
            blocks.append(tile_map(deck, size, bodies, laid))
            for tile in laid:
                here = tuple(body for body in bodies if _near(body.area, tile.area))
                plugged = tuple(plug for room, plug in standing if _near(room, tile.area))
                drilled = tuple(each for each in holes.of(deck.name) if _within(each, tile.area))
                blocks.append(full_size(rig, deck, size, here, plugged, drilled, tile, kept))
    if len(blocks) == 1:
        blocks = [Paragraph("nothing", ("No deck of known size has a unit on it yet: nothing to print.",))]
    blocks[1:1] = chosen_note(rig, placement.outlines)
    return Sheet("plan-full-size", "Plan at full size", "the player, to stand on it", tuple(blocks))


def _near(room: Rectangle, tile: Rectangle) -> bool:
    """Whether a tile may show anything of it: its switches lie within it, and their rings not far beyond."""
    return min(room.overlap(tile)) >= -_BESIDE_MM


def _within(hole: DeckHole, tile: Rectangle) -> bool:
    across = hole.x_mm <= tile.right_mm and tile.x_mm <= hole.right_mm
    return across and tile.y_mm <= hole.y_mm <= tile.rear_mm


PLACE = 2
SHEET = plan_full_size
