"""Prices of what is offered are in several currencies.

Why it matters: no sum is made of them. The quote ends in a sum for each, and a lead whose cable and plugs have prices in two currencies has none.
What to do: state all in the currency of the quote; rigc knows no rates of exchange.
Source: arithmetic on stated values.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Leads
from rigc.analysis.stores.offer import Offer
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import joined
from rigc.model.fact import Choice
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig

KIND = Kind(
    "unlike-currencies",
    Level.REMARK,
    __doc__,
    "what is offered and the hour at the bench have prices in one currency",
    "arithmetic on stated values",
)


def unlike_currencies(rig: Rig, offer: Offer, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for the rig, at the first price in the currency that fewest prices are in; of equal ones the one that comes later."""
    by_currency: dict[str, list[tuple[str, Choice]]] = {}
    for name, price in _prices(rig, offer, leads):
        by_currency.setdefault(amount_and_currency(price)[1], []).append((name, price))
    if len(by_currency) > 1:
        yield _told(by_currency)


def _prices(rig: Rig, offer: Offer, leads: Leads) -> Iterator[tuple[str, Choice]]:
    """What is priced and belongs to the quote, with its price, in the order of the quote."""
    named = {each.name for each in offer.items}
    for thing in (
        *rig.things.values(),
        *rig.mains_strips.values(),
        *rig.panels.values(),
        *rig.decks.values(),
        *rig.cases.values(),
    ):
        price = thing.papers.price
        if thing.name in named and price is not None:
            yield f"'{thing.name}'", price
    cables = dict.fromkeys(lead.cable for lead in leads.all if lead.cable is not None)
    plugs = dict.fromkeys(name for lead in leads.all for name in lead.plugs or ())
    stock = {
        **{name: rig.stock.cables[name].price for name in cables},
        **{name: rig.stock.plugs[name].price for name in plugs},
    }
    yield from ((f"'{name}'", price) for name, price in stock.items() if price is not None)
    signals = {rig.stock.premade_list(lead.signal) for lead in leads.all}
    for signal, prices in rig.stock.premade_price.items():
        if signal in signals:
            yield from ((f"the premade {signal} leads", price) for price in prices.values())
    if rig.head.rate is not None:
        yield "the hour at the bench", rig.head.rate


def _told(by_currency: dict[str, list[tuple[str, Choice]]]) -> Diagnostic:
    rare = min(reversed(by_currency), key=lambda each: len(by_currency[each]))
    usual = max(by_currency, key=lambda each: len(by_currency[each]))
    names = tuple(dict.fromkeys(name for name, _ in by_currency[rare]))
    others = joined(each for each in by_currency if each != rare)
    return KIND.at(
        by_currency[rare][0][1].span,
        f"{joined(names)} {'has' if len(names) == 1 else 'have'} a price in {rare}, all else in {others}: they are not added up",
        subject=(rare, *(name.strip("'") for name in names)),
        label=f"in {rare}",
        also=(Label(by_currency[usual][0][1].span, f"in {usual}"),),
        help=f"state {'it' if len(names) == 1 else 'them'} in {usual}, at the rate of the day that you agree on",
    )


CHECK = unlike_currencies
