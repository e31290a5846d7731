"""Leads that are bought in a length of the stock -> what they cost and weigh: `D3.price`, `D3.mass`, and of a class
`dc.bought-price`, `dc.bought-mass`."""

from __future__ import annotations

from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.stores.ready_lead import ready_mass, ready_price
from rigc.model.fact import Choice, Quantity
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, Several, known_figure
from rigc.traced.given import price, stated, unstated
from rigc.traced.means import total_known
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.units import GRAMS, money

_RULE = "the sum over the bought leads of the class whose figure is stated"


class Bought(Record):
    """The bought leads of a class by number, each with its price and its mass in kg, None where not stated. `price` is the sum in
    each currency, `12.50 EUR, 3.00 USD`, each told by itself where there are several (`dc.bought-price-eur`), `mass` that of the masses that are stated; None where none is."""

    prices: dict[str, Figure | None]
    masses: dict[str, Figure | None]
    price: Figure | Several | None
    mass: Figure | None


class BoughtLeads(Record):
    """Those that stay on the board, by class in the order of the leads."""

    classes: dict[str, Bought]


def bought_leads(rig: Rig, leads: Leads, lengths: CableLengths) -> BoughtLeads:
    """Looks up each bought lead in the lists of the stock."""
    own: dict[str, list[Lead]] = {signal: [] for signal in lengths.totals}
    for lead in leads.all:
        if not lead.stage and status(rig, lead) == "buy":
            own[lead.signal].append(lead)
    return BoughtLeads({signal: _bought(rig, signal, each, lengths) for signal, each in own.items()})


def stated_price(name: str, label: str, fact: Choice) -> Figure:
    """A stated sum of money as a figure, in its currency."""
    _, currency = amount_and_currency(fact)
    return known_figure(name, price(label, fact), money(currency), rule=AS_STATED, source=STATED)


def stated_mass(name: str, label: str, fact: Quantity) -> Figure:
    """A stated mass in kg as a figure, told in g."""
    return known_figure(name, stated(label, fact), GRAMS, rule=AS_STATED, source=STATED)


def _bought(rig: Rig, signal: str, own: list[Lead], lengths: CableLengths) -> Bought:
    prices: dict[str, Figure | None] = {}
    masses: dict[str, Figure | None] = {}
    for lead in own:
        mark, supplied = lead.mark, lengths.supplied_mm(lead.mark)
        cost, mass = ready_price(rig, lead, supplied), ready_mass(rig, lead, supplied)
        what = f"premade {signal} lead"
        prices[mark] = None if cost is None else stated_price(f"{mark}.price", what, cost)
        masses[mark] = None if mass is None else stated_mass(f"{mark}.mass", f"what a {what} weighs", mass)
    return Bought(prices, masses, _prices(f"{signal}.bought-price", prices), _masses(signal, masses))


def _prices(name: str, prices: dict[str, Figure | None]) -> Figure | Several | None:
    by_currency: dict[str, list[Figure]] = {}
    for each in prices.values():
        if each is not None:
            by_currency.setdefault(each.unit, []).append(each)
    without = [unstated(mark) for mark, each in prices.items() if each is None]
    one = len(by_currency) == 1
    sums = tuple(
        known_figure(
            name if one else f"{name}-{currency.lower()}",
            total_known(own, without),
            money(currency),
            rule=_RULE,
            source=ARITHMETIC,
        )
        for currency, own in by_currency.items()
    )
    if len(sums) < 2:
        return sums[0] if sums else None
    return Several(
        name,
        sums,
        written="{}" + "".join(f" {before}, {{}}" for before in list(by_currency)[:-1]),
        formulas="; ".join(f"in {currency}: {{}}" for currency in by_currency),
        rule=_RULE,
        source=ARITHMETIC,
    )


def _masses(signal: str, masses: dict[str, Figure | None]) -> Figure | None:
    known = [mass for mass in masses.values() if mass is not None]
    if not known:
        return None
    without = [unstated(mark) for mark, mass in masses.items() if mass is None]
    return known_figure(f"{signal}.bought-mass", total_known(known, without), GRAMS, rule=_RULE, source=ARITHMETIC)


COMPUTE = bought_leads
