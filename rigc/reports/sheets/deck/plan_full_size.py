"""Plan at full size: tiles for A4 and Letter, to stand on with shoes before anything is cut."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.reports.content import Block, Paragraph, Sheet
from rigc.reports.deck.chosen_places import chosen_note
from rigc.reports.deck.hole_table import deck_holes
from rigc.reports.drawings.deck.full_size import Drill, full_size
from rigc.reports.drawings.deck.lead_ways import Way, ways
from rigc.reports.drawings.deck.tile_map import tile_map
from rigc.reports.drawings.deck.tiles import tiles

_HOW = (
    "Print at 100 %, with no fitting to the page. Measure both rulers of each page, from end to end: else the print is false.",
    "Cut along the grey frame on one side of each join, lay that edge on the neighbour's dotted line, cross on cross, and tape.",
    "A cross with H and a number is the centre of a hole, numbers as in the hole schedule; ø is its diameter in mm.",
    "Crossed rings are foot switches, plain ones knobs; plugs are dashed, drop lines dash and dot.",
    "Stand on it in the shoes that are worn on stage: is each switch met without the next one?",
)

_BESIDE_MM = 50.0


def plan_full_size(rig: Rig, placement: Placement, plugs: PlugBodies, leads: Leads, paths: RoutePaths) -> Sheet:
    """How to join the tiles, a map of them, and the tiles; a sentence where no deck has a size."""
    blocks: list[Block] = [Paragraph("joining", _HOW, heading="How to print and join")]
    for deck in rig.decks.values():
        bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
        if bodies and deck.width_mm is not None and deck.depth_mm is not None:
            size = (deck.width_mm.value, deck.depth_mm.value)
            laid = tiles(*size)
            names = {body.thing for body in bodies}
            standing = [(plug.room(), plug) for plug in plugs.all if plug.thing in names]
            holes = _drills(rig, deck, ways(leads, paths, placement, deck.name))
            blocks.append(tile_map(deck, size, bodies, laid))
            for tile in laid:
                here = tuple(body for body in bodies if _near(body.area, tile.area))
                plugged = tuple(plug for room, plug in standing if _near(room, tile.area))
                drills = tuple(each for each in holes if _within(each, tile.area))
                blocks.append(full_size(rig, deck, size, here, plugged, drills, tile))
    if len(blocks) == 1:
        blocks = [Paragraph("nothing", ("No deck of known size has a unit on it yet: nothing to print.",))]
    blocks[1:1] = chosen_note(rig, placement.outlines)
    return Sheet("plan-full-size", "Plan at full size", "the player, to stand on it", tuple(blocks))


def _near(room: Rectangle, tile: Rectangle) -> bool:
    """Whether a tile may show anything of it: its switches lie within it, and their rings not far beyond."""
    return min(room.overlap(tile)) >= -_BESIDE_MM


def _drills(rig: Rig, deck: Deck, laid: tuple[Way, ...]) -> tuple[Drill, ...]:
    """All that is drilled or cut, with its number in the hole schedule."""
    return tuple(
        Drill(f"H{at}", hole.x_mm, hole.x_to_mm, hole.y_mm, hole.diameter_mm)
        for at, hole in enumerate(deck_holes(rig, deck, laid), 1)
    )


def _within(drill: Drill, tile: Rectangle) -> bool:
    across = drill.x_mm <= tile.right_mm and tile.x_mm <= drill.to_x_mm
    return across and tile.y_mm <= drill.y_mm <= tile.rear_mm


PLACE = 2
SHEET = plan_full_size
