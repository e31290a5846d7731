"""Chosen places -> what each costs by the terms of the objective, in millimetres of audio lead: `plumb.place`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.at_hand import Handled, handled, spots_at_hand
from rigc.analysis.laying.use import uses
from rigc.analysis.laying.weights import TERMS, cable_for, priced_share, weights
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.facts.laying import EDGE_MM
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import ours, price, stands, stated
from rigc.traced.means import found, in_its_unit, total
from rigc.traced.term import Term
from rigc.traced.units import NEAREST_TENTH

_RULE = (
    "in millimetres of audio lead, so many percent of each: the leads that end there, sound that goes to the right in them, the deck before "
    "what a foot works or behind what none does, how far a hand must come for it; no rule may be broken, and wishes come first"
)
_SOURCE = "our choice; `rigc show places` has all terms"


class PlaceCosts(Record):
    """One figure for each thing with a chosen place, in the order of the places."""

    all: tuple[Figure, ...]


def place_costs(rig: Rig, leads: Leads, lengths: CableLengths, placement: Placement) -> PlaceCosts:
    """A lead counts at both of its ends, so these do not add up to what the whole layout costs."""
    chosen = [place for place in rig.places.values() if place.chosen and place.thing in placement.outlines]
    if not chosen:
        return PlaceCosts(())
    worth, hands = uses(rig, weights(rig)), handled(rig, leads)
    return PlaceCosts(
        tuple(
            known_figure(
                f"{place.thing}.place",
                total(
                    (
                        *_leads(rig, leads, lengths, place),
                        *_ground(rig, placement, place, worth.get(place.thing, 0)),
                        *_at_hand(rig, placement, place, hands, worth.get(place.thing, 0)),
                    )
                ),
                NEAREST_TENTH,
                stands(place),
                rule=_RULE,
                source=_SOURCE,
            )
            for place in chosen
        )
    )


def _leads(rig: Rig, leads: Leads, lengths: CableLengths, place: Place) -> Iterator[Term]:
    for lead in leads.all:
        if place.thing not in (lead.start.thing, lead.end.thing) or lead.stage or lead.mark not in lengths.lengths:
            continue
        yield in_its_unit(lengths.lengths[lead.mark].made) * _share(rig, lead) / 100
        back = _backwards(rig, lead)
        if back > 0:
            yield _counted(back) * _weight(rig, "onward") / 100 * _share(rig, lead) / 100


def _backwards(rig: Rig, lead: Lead) -> float:
    """How far sound goes to the right in a lead, from thing to thing; what plays into loops and out of them has no direction."""
    start, end = rig.places.get(lead.start.thing), rig.places.get(lead.end.thing)
    if lead.signal != "audio" or start is None or end is None:
        return 0.0
    looped = any(rig.things[port.thing].loops for port in (lead.start, lead.end))
    return 0.0 if looped else end.x_mm - start.x_mm


def _ground(rig: Rig, placement: Placement, place: Place, worth: int) -> Iterator[Term]:
    """The deck before what a foot works, or behind what none does."""
    body, deck = placement.outlines[place.thing], rig.deck
    if worth > 0:
        facts = (_weight(rig, "bare deck"), _weight(rig, "stamped"))
        yield _counted(body.y_mm) * found(worth, lambda: f"{worth}", *facts) / 100
    elif worth < 0 and deck is not None and deck.depth_mm is not None:
        yield _counted(deck.depth_mm.value - body.y_mm - body.depth_mm) * _weight(rig, "behind") / 100


def _at_hand(rig: Rig, placement: Placement, place: Place, hands: tuple[Handled, ...], worth: int) -> Iterator[Term]:
    """How much further a hand must come for it from the nearest edge than it reaches, or for what no foot works from the rear one."""
    deck = rig.deck
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return
    for x, y, each in spots_at_hand(placement, hands, place.thing):
        rear = deck.depth_mm.value - y
        far = max(0.0, (rear if worth < 0 else min(x, deck.width_mm.value - x, rear)) - EDGE_MM.value)
        share: Term = _counted(far) * _weight(rig, "at hand") / 100
        share = share if each.sounds else share * _weight(rig, "other leads") / 100
        yield share / 3 if each.trodden else share


def _share(rig: Rig, lead: Lead) -> Term:
    """What a millimetre of a lead weighs, in percent."""
    here, audio = cable_for(rig, lead.signal), cable_for(rig, "audio")
    if lead.signal == "audio" or here is None or audio is None or priced_share(rig, lead.signal) is None:
        return _weight(rig, "audio leads" if lead.signal == "audio" else "other leads")
    assert here.price is not None and audio.price is not None
    metres = price(f"a metre of {here.name}", here.price), price(f"a metre of {audio.name}", audio.price)
    share: Term = _weight(rig, "audio leads") * metres[0] / metres[1]
    return share


def _weight(rig: Rig, term: str) -> Term:
    own = next((each for each in rig.weights if each.term == term), None)
    return ours(TERMS[term], f"weight of {term}") if own is None else stated(f"weight of {term}", own.share)


def _counted(value: float) -> Term:
    return found(value, lambda: f"{value:g}")


COMPUTE = place_costs
