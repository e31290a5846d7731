"""Stated prices -> what a rig costs in material, item by item, and in all: `plumb.price`, `audio.made-price-eur`, `rig.price-eur`.

What is somebody's already is not offered to him: a thing whose owner is stated has no item.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.used_decks import used_decks
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.leads.lead_status import made_here
from rigc.analysis.leads.leads import Leads
from rigc.analysis.stores.bought_leads import BoughtLeads, stated_price
from rigc.analysis.stores.made_or_bought import MadeOrBought
from rigc.model.deck import Case, Deck
from rigc.model.rig import Rig
from rigc.model.things import Panel, Thing
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.means import total_known
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import money


class Item(Record):
    """What is offered: `name`, in words `what`, and the price of that `count` together."""

    name: str
    what: str
    count: int
    price: Figure


class Offer(Record):
    """The items, the sum of each currency, and the things and leads that have no price."""

    items: tuple[Item, ...]
    sums: tuple[Figure, ...]
    unpriced: tuple[str, ...]


def offer(rig: Rig, power: PowerAssignment, leads: Leads, made: MadeOrBought, bought: BoughtLeads) -> Offer:
    """Things and decks, then the leads that are made here by their parts, then those that are bought."""
    things, without = _things(rig, power)
    parts = {each.length.mark: each.parts for each in made.all}
    by_class: dict[str, dict[str, Figure | None]] = {}
    for lead in leads.all:
        if made_here(rig, lead):
            by_class.setdefault(lead.signal, {})[lead.mark] = parts.get(lead.mark)
    items = [*things]
    for signal, found in by_class.items():
        items += _leads(signal, "made", f"{signal} leads, parts of those made here", found)
    for signal, ready in bought.classes.items():
        items += _leads(signal, "ready", f"{signal} leads, bought ready", ready.prices)
    without += [mark for found in by_class.values() for mark, figure in found.items() if figure is None]
    without += [mark for ready in bought.classes.values() for mark, figure in ready.prices.items() if figure is None]
    return Offer(tuple(items), tuple(_sums(items)), tuple(without))


def _things(rig: Rig, power: PowerAssignment) -> tuple[list[Item], list[str]]:
    """Those that nobody owns, and the names of those among them that state no price; amps, desks, mains strips, panels and cases only
    where they state one. Instruments are somebody's."""
    items, without = list[Item](), list[str]()
    asked = {thing.name for thing in used_things(rig, power) if thing.kind in ("unit", "supply")}
    asked |= {deck.name for deck in used_decks(rig)}
    every: tuple[Thing | Panel | Deck | Case, ...] = (
        *used_things(rig, power),
        *rig.mains_strips.values(),
        *rig.panels.values(),
        *used_decks(rig),
        *rig.cases.values(),
    )
    for thing in every:
        name, papers = thing.name, thing.papers
        if papers.owner is None and papers.price is not None:
            items.append(Item(name, thing.title, 1, stated_price(f"{name}.price", name, papers.price)))
        elif papers.owner is None and name in asked:
            without.append(name)
    return items, without


def _leads(signal: str, how: str, what: str, prices: dict[str, Figure | None]) -> Iterator[Item]:
    known: dict[str, list[Figure]] = {}
    for each in prices.values():
        if each is not None:
            known.setdefault(each.unit, []).append(each)
    for currency, found in known.items():
        name = f"{signal}.{how}-price-{currency.lower()}"
        rule = "the sum over the leads of the class whose price is known"
        figure = known_figure(name, total_known(found), money(currency), rule=rule, source=ARITHMETIC)
        yield Item(f"{signal} leads", what, len(found), figure)


def _sums(items: list[Item]) -> Iterator[Figure]:
    by_currency: dict[str, list[Figure]] = {}
    for each in items:
        by_currency.setdefault(each.price.unit, []).append(each.price)
    for currency, found in by_currency.items():
        name, rule = f"rig.price-{currency.lower()}", "the sum of the items in this currency; work is not in it"
        yield known_figure(name, total_known(found), money(currency), rule=rule, source=ARITHMETIC)


COMPUTE = offer
