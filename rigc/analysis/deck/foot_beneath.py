"""What a foot works and hangs under the deck, where no foot comes to it; and what hangs too low there."""

from __future__ import annotations

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.analysis.deck.placement import Outline
from rigc.facts.clearance import UNDERSIDE_MM
from rigc.model.rig import Rig

_HAIR_MM = 1e-6


def foot_beneath(rig: Rig) -> dict[str, str]:
    """The units under a deck whose `treadle` or `foot switch` (this word by the unit's name) nothing else works: no loop of a switcher holds them,
    and no hand is said to."""
    held = {stop.thing for use in rig.loops for stop in use.stops}
    found = {}
    for place in rig.places.values():
        unit = rig.units.get(place.thing)
        if unit is None or not place.under or unit.name in held or worked_by_hand(unit):
            continue
        what = "treadle" if unit.treadle_mm is not None else "foot switch" if unit.switches else ""
        if what:
            found[unit.name] = what
    return found


def too_low_mm(rig: Rig, body: Outline) -> float | None:
    """By how much more room a thing needs under its deck than there is, in mm; None where it hangs well or that is not known."""
    deck = rig.decks.get(body.deck or "")
    if not body.under or body.height_mm is None or deck is None or deck.clearance_mm is None:
        return None
    over = body.height_mm + UNDERSIDE_MM.value - deck.clearance_mm.value
    return over if over > _HAIR_MM else None
