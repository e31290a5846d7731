"""A lead that is made here, its cut length and the stock's prices -> what its parts cost, if all prices are stated."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead
from rigc.model.fact import Choice
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig


def hand_made_price(rig: Rig, lead: Lead, cut: int | None) -> tuple[float, str] | None:
    """The sum and its currency for cable (`cut` in tenths of a millimetre) and both plugs; work is not in it.

    None where a price or the cut length is missing, or prices are in different currencies. Soldered ends cost nothing.
    """
    cable = rig.stock.cables.get(lead.cable or "")
    if lead.plugs is None or cut is None or cable is None:
        return None
    plugs = [rig.stock.plugs[plug] for plug in lead.plugs]
    parts = [_price(cable.price, cut / 10_000), *(_price(plug.price, 1) for plug in plugs if not plug.soldered)]
    known = [part for part in parts if part is not None]
    currencies = {currency for _, currency in known}
    if len(known) < len(parts) or len(currencies) != 1:
        return None
    return sum(amount for amount, _ in known), currencies.pop()


def _price(price: Choice | None, times: float) -> tuple[float, str] | None:
    if price is None:
        return None
    amount, currency = amount_and_currency(price)
    return float(amount) * times, currency
