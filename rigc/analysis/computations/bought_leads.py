"""Leads that are bought in a length of the stock -> what they cost and weigh: `D3.price`, `D3.mass`, and of a class
`dc.bought-price`, `dc.bought-mass`."""

from __future__ import annotations

from rigc.analysis.cables.lead_status import status
from rigc.analysis.cables.ready_lead import ready_mass, ready_price
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.diagnostics.figures import money
from rigc.model.fact import Choice, Quantity
from rigc.model.money import amount_and_currency, summed
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Answer, Figure, known_figure
from rigc.traced.given import choice, stated, unstated
from rigc.traced.means import total_known
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.units import GRAMS

_RULE = "the sum over the bought leads of the class whose figure is stated"


class Bought(Record):
    """The bought leads of a class by number, each with its price and its mass in kg, None where not stated. `price` is the sum in
    each currency, `12.50 EUR, 3.00 USD`, `mass` that of the masses that are stated; None where none is."""

    prices: dict[str, Answer | None]
    masses: dict[str, Figure | None]
    price: Answer | None
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


def _bought(rig: Rig, signal: str, own: list[Lead], lengths: CableLengths) -> Bought:
    facts = {lead.mark: ready_price(rig, lead, lengths.supplied_mm(lead.mark)) for lead in own}
    prices = {mark: None if price is None else _price(signal, mark, price) for mark, price in facts.items()}
    weights = {lead.mark: ready_mass(rig, lead, lengths.supplied_mm(lead.mark)) for lead in own}
    masses = {mark: None if mass is None else _mass(signal, mark, mass) for mark, mass in weights.items()}
    return Bought(prices, masses, _prices(signal, facts, prices), _masses(signal, masses))


def _price(signal: str, mark: str, price: Choice) -> Answer:
    return Answer(
        f"{mark}.price",
        money(*amount_and_currency(price)),
        f"{price.typed}, as stated",
        choice(f"premade {signal} lead", price),
        rule=AS_STATED,
        source=STATED,
    )


def _mass(signal: str, mark: str, mass: Quantity) -> Figure:
    value = stated(f"what a premade {signal} lead weighs", mass)
    return known_figure(f"{mark}.mass", value, GRAMS, rule=AS_STATED, source=STATED)


def _prices(signal: str, facts: dict[str, Choice | None], prices: dict[str, Answer | None]) -> Answer | None:
    sums = summed(facts.values())
    if not sums:
        return None

    def formula() -> str:
        known = [amount_and_currency(price) for price in facts.values() if price is not None]
        terms = {each: " + ".join(str(amount) for amount, its in known if its == each) for each in sums}
        missing = [mark for mark, price in facts.items() if price is None]
        without = f", without {', '.join(missing)}" if missing else ""
        return "; ".join(f"{terms[each]} = {money(amount, each)}" for each, amount in sums.items()) + without

    return Answer(
        f"{signal}.bought-price",
        ", ".join(money(amount, currency) for currency, amount in sums.items()),
        formula,
        *(price for price in prices.values() if price is not None),
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
