"""The decks seen from above, with all that can be picked on them: bodies and the ways of leads, in mm of the deck."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.results import Results
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.model.deck import Deck
from rigc.output.svg import inline
from rigc.reports.drawings.deck.lead_ways import ways
from rigc.reports.drawings.deck.plan import plan
from rigc.reports.drawings.deck.sheet_view import view_of


def plans(results: Results) -> list[dict[str, Any]]:
    """A drawing for each deck in use whose size is stated. It shows what stands where, without flags and dimensions: those take longer
    to set than one waits for."""
    placement = results.get(Placement)
    used = {body.deck for body in placement.outlines.values()}
    return [_plan(results, deck) for deck in results.rig.decks.values() if deck.name in used and _has_size(deck)]


def _has_size(deck: Deck) -> bool:
    return deck.width_mm is not None and deck.depth_mm is not None


def _plan(results: Results, deck: Deck) -> dict[str, Any]:
    assert deck.width_mm is not None and deck.depth_mm is not None
    rig, placement = results.rig, results.get(Placement)
    view = view_of(deck.width_mm.value, deck.depth_mm.value)
    laid = ways(results.get(Leads), results.get(RoutePaths), placement, deck.name)
    drawn = plan(rig, deck, view, placement, results.get(PlugBodies), laid)
    return {
        "deck": deck.name,
        "title": drawn.title,
        "width": drawn.width_mm,
        "height": drawn.height_mm,
        "svg": inline(drawn.replace(scale=0.0), f"plan-{deck.name}"),
        "scale": view.scale,
        "left": view.left,
        "top": view.top,
        "size": [view.width_mm, view.depth_mm],
        "bodies": [_body(results, each) for each in placement.outlines.values() if each.deck == deck.name],
        "leads": [{"name": each.mark, "parts": list(_parts(each.stretches()))} for each in laid],
    }


def _body(results: Results, body: Outline) -> dict[str, Any]:
    place = results.rig.places.get(body.thing)
    return {
        "name": body.thing,
        "x": body.x_mm,
        "y": body.y_mm,
        "width": body.width_mm,
        "depth": body.depth_mm,
        "under": body.under,
        "askew": [list(corner) for corner in body.askew],
        "chosen": place is not None and place.chosen,
    }


def _parts(stretches: tuple[tuple[bool, tuple[tuple[float, float], ...]], ...]) -> Iterator[dict[str, Any]]:
    for above, points in stretches:
        yield {"above": above, "points": [list(point) for point in points]}
