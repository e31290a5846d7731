"""The holes of both boards -> the passages for leads that are drilled anew, or cut wider. What no lead goes through any more stays
open: it is wanted on the way back."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.plan.plan_records import FittingPlan
from rigc.analysis.routes.deck_holes import PASSAGE, STATED, DeckHole, DeckHoles, Through
from rigc.diagnostics.figures import nearest_tenth
from rigc.facts.bench import WEB_MM
from rigc.facts.rework import NEAR_HOLE_MM

_SAME_MM = 0.5
"""Lines in y are where they were to half a millimetre; no drill is led nearer by hand."""


def passage_plans(old: DeckHoles, new: DeckHoles, fresh: frozenset[str]) -> tuple[FittingPlan, ...]:
    """Passages in the order of their numbers on the new hole schedule; on a `fresh` deck all of them, beforehand. `before` are the holes
    that are there and become part of one. A gap between rails needs no drill. Where the size of a hole is not known, a lead that goes through where one went before needs none either."""
    return tuple(plan for deck in new.decks for plan in _on_deck(deck, old, new, deck in fresh))


def _on_deck(deck: str, old: DeckHoles, new: DeckHoles, fresh: bool) -> Iterator[FittingPlan]:
    there = [] if fresh else [hole for hole in old.of(deck) if hole.kind in (PASSAGE, STATED)]
    for hole in new.of(deck):
        lacking = [each for each in hole.through if not any(_serves(one, each, hole.y_mm) for one in there)]
        if lacking and not hole.open:
            leads = tuple(dict.fromkeys(mark for each in lacking for mark in each.leads))
            near = " and ".join(_place(each) for each in there if _meet(each, hole))
            name = f"{hole.number} for {', '.join(leads)}"
            yield FittingPlan("passage", name, near, _at(hole), deck, beforehand=fresh, leads=leads)


def _serves(there: DeckHole, lead: Through, y_mm: float) -> bool:
    """Whether a hole that is there already takes the plugs of a lead, at its edge too, and a little beside its own way."""
    spare = 0.0
    if there.diameter_mm is not None and lead.needs_mm is not None:
        spare = (there.diameter_mm - lead.needs_mm) / 2
    room = spare + NEAR_HOLE_MM.value
    within = there.x_mm - room <= lead.x_mm <= there.right_mm + room
    return spare >= 0 and within and abs(there.y_mm - y_mm) <= _SAME_MM


def _meet(there: DeckHole, hole: DeckHole) -> bool:
    """Whether the web between the two would be too thin, or there is none."""
    across = (there.diameter_mm or 0.0) / 2 + (hole.diameter_mm or 0.0) / 2 + WEB_MM.value
    apart = max(hole.x_mm - there.right_mm, there.x_mm - hole.right_mm)
    return abs(there.y_mm - hole.y_mm) <= _SAME_MM and apart < across and not there.open


def _place(hole: DeckHole) -> str:
    stretch = "" if hole.to_x_mm is None else f" to {nearest_tenth(hole.to_x_mm)}"
    return f"{nearest_tenth(hole.x_mm)}{stretch}, {nearest_tenth(hole.y_mm)} mm"


def _at(hole: DeckHole) -> str:
    size = "to suit the plug" if hole.size is None else f"{hole.size.text} mm"
    return f"{_place(hole)}, {size}"
