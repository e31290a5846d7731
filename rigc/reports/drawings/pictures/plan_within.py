"""The plan of each deck in use, as large as a space on a page allows: for sheets that show the rig and are no drawing to build from."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.deck_ground import MARGIN_RIGHT
from rigc.reports.drawings.deck.lead_ways import ways
from rigc.reports.drawings.deck.plan import decks_in_use, plan
from rigc.reports.drawings.deck.sheet_view import LEFT, PLAIN_BOTTOM, TOP
from rigc.reports.drawings.deck.view import View


def plans_within(
    rig: Rig,
    placement: Placement,
    plugs: PlugBodies,
    leads: Leads,
    paths: RoutePaths,
    width: float,
    height: float,
    kept: Kept = NOTHING_KEPT,
) -> tuple[Drawing, ...]:
    """`width` and `height` in mm are for all of them together, one above the other; a deck whose size is not stated has none.

    Without a scale bar: nobody measures in a picture that is as large as a page happened to let it be.
    """
    decks = decks_in_use(rig, placement)
    found = []
    for deck in decks:
        view = _view(deck, width, height / len(decks))
        drawn: Drawing = plan(rig, deck, view, placement, plugs, ways(leads, paths, placement, deck.name), kept=kept)
        found.append(drawn.replace(scale=0.0))
    return tuple(found)


def _view(deck: Deck, width: float, height: float) -> View:
    """Any whole n of 1:n: what is to build from is drawn at the usual scales elsewhere."""
    assert deck.width_mm is not None and deck.depth_mm is not None
    wide, deep = deck.width_mm.value, deck.depth_mm.value
    room = width - LEFT - MARGIN_RIGHT, height - TOP - PLAIN_BOTTOM
    scale = max(1, -int(-wide // room[0]), -int(-deep // max(room[1], 20.0)))
    return View(scale, LEFT, TOP, wide, deep)
