"""Leads as they would be made here, beside the premade ones that would do -> what each would cost and weigh: `A2.parts-price`,
`A2.premade-price`, `A2.premade-mass`."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths, Length
from rigc.analysis.stores.bought_leads import stated_mass, stated_price
from rigc.analysis.stores.ready_lead import next_mass, next_price
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import price
from rigc.traced.means import in_its_unit, total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import money


class Offer(Record):
    """What the `parts` of a lead cost, and what the premade one that would do costs and weighs (in kg); each None where not stated."""

    length: Length
    parts: Figure | None
    price: Figure | None
    mass: Figure | None


class MadeOrBought(Record):
    """The leads of the board that have a length and are not fixed to their unit or brick, in their order."""

    all: tuple[Offer, ...]


def made_or_bought(rig: Rig, leads: Leads, lengths: CableLengths) -> MadeOrBought:
    """Reckons the parts, and looks up the premade lead in the stock."""
    found = ((lead, lengths.lengths.get(lead.mark)) for lead in leads.all if lead.captive is None)
    return MadeOrBought(tuple(_offer(rig, lead, length) for lead, length in found if length is not None))


def _offer(rig: Rig, lead: Lead, length: Length) -> Offer:
    mark, what = lead.mark, f"premade {lead.signal} lead"
    cost, mass = next_price(rig, lead, length), next_mass(rig, lead, length)
    return Offer(
        length,
        _parts(rig, lead, length),
        None if cost is None else stated_price(f"{mark}.premade-price", what, cost),
        None if mass is None else stated_mass(f"{mark}.premade-mass", f"what a {what} weighs", mass),
    )


def _parts(rig: Rig, lead: Lead, length: Length) -> Figure | None:
    """Cable and both plugs; work is not in it, soldered ends cost nothing.

    None where a price or the cut length is missing, or prices are in different currencies.
    """
    cable = rig.stock.cables.get(lead.cable or "")
    if lead.plugs is None or cable is None or cable.price is None or not isinstance(length.cutting, Figure):
        return None
    plugs = [plug for plug in (rig.stock.plugs[name] for name in lead.plugs) if not plug.soldered]
    priced = [(plug.name, plug.price) for plug in plugs if plug.price is not None]
    _, currency = amount_and_currency(cable.price)
    if len(priced) < len(plugs) or any(amount_and_currency(fact)[1] != currency for _, fact in priced):
        return None
    by_length = in_its_unit(length.cutting) / 1000 * price(f"a metre of {cable.name}", cable.price)
    return known_figure(
        f"{lead.mark}.parts-price",
        total((by_length, *(price(f"plug {name}", fact) for name, fact in priced))),
        money(currency),
        rule="the cut length of cable by the metre, and both plugs; work is not in it",
        source=ARITHMETIC,
    )


COMPUTE = made_or_bought
