"""Deck drawing: plan, views from below and from two sides, holes, clashes of plugs."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import Kept
from rigc.analysis.laying.wishes.place_wishes import PlaceWishes
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.leads.plugs.plug_clash import PlugClash
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.routes.deck_holes import DeckHoles
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Block, Paragraph, Sheet
from rigc.reports.deck.chosen_places import chosen_note
from rigc.reports.deck.hole_table import hole_table
from rigc.reports.deck.place_table import place_table
from rigc.reports.drawings.deck.around_deck import case_room
from rigc.reports.drawings.deck.clash_detail import clash_details
from rigc.reports.drawings.deck.elevation import elevation
from rigc.reports.drawings.deck.faces import REAR, SIDE
from rigc.reports.drawings.deck.hole_plan import hole_plan
from rigc.reports.drawings.deck.lead_ways import ways
from rigc.reports.drawings.deck.plan import plan
from rigc.reports.drawings.deck.sheet_view import view_of
from rigc.reports.drawings.deck.underside import undersides
from rigc.reports.laying.wish_table import wish_blocks


def deck_drawing(
    rig: Rig,
    placement: Placement,
    plugs: PlugBodies,
    clash: PlugClash,
    leads: Leads,
    paths: RoutePaths,
    holes: DeckHoles,
    strips: MountingStrip,
    wishes: PlaceWishes,
    kept: Kept,
) -> Sheet:
    """For each deck in use its drawings and tables; a sentence where the source has no deck."""
    blocks: list[Block] = []
    for deck in rig.decks.values():
        if any(body.deck == deck.name for body in placement.outlines.values()):
            blocks += _blocks(rig, deck, placement, plugs, clash, leads, paths, holes, strips, kept)
    blocks += chosen_note(rig, placement.outlines)
    blocks += wish_blocks(rig, wishes)
    if not blocks:
        blocks.append(Paragraph("nothing", ("No deck has a thing on it yet: state a deck and places.",)))
    return Sheet(
        "deck-drawing",
        "Deck drawing",
        "the shop that makes the deck, and who fits it out",
        tuple(blocks),
        landscape=True,
    )


def _blocks(
    rig: Rig,
    deck: Deck,
    placement: Placement,
    plugs: PlugBodies,
    clash: PlugClash,
    leads: Leads,
    paths: RoutePaths,
    holes: DeckHoles,
    strips: MountingStrip,
    kept: Kept,
) -> list[Block]:
    if deck.width_mm is None or deck.depth_mm is None:
        return [
            Paragraph(f"unknown-{deck.name}", (f"The size of deck '{deck.name}' is not stated: no drawing of it.",))
        ]
    size = deck.width_mm.value, deck.depth_mm.value
    case = case_room(rig, deck)
    around = (0.0, 0.0) if case is None else (case.aside_mm, case.along_mm)
    laid = ways(leads, paths, placement, deck.name)
    return [
        plan(rig, deck, view_of(*size, around_mm=around), placement, plugs, laid, leads, kept),
        hole_plan(deck, view_of(*size), placement, holes.of(deck.name), strips, kept),
        *undersides(rig, deck, view_of(*size, below=True), placement, laid, leads, kept),
        elevation(rig, deck, size[0], placement, plugs, REAR),
        elevation(rig, deck, size[1], placement, plugs, SIDE),
        *clash_details(clash, placement, deck.name, kept),
        hole_table(deck, holes.of(deck.name)),
        place_table(rig, deck, placement),
    ]


PLACE = 1
SHEET = deck_drawing
