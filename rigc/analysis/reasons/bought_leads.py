"""What bought leads cost and weigh: `D3.price`, `D3.mass`, and of a class `dc.bought-price`, `dc.bought-mass`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rigc.analysis.cables.ready_lead import Bought, bought
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Leads
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, stated
from rigc.diagnostics.figures import grams, money, plain
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, STATED, Reason


def bought_leads(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Two reasons at most for each bought lead, and two for each class; none where nothing is stated."""
    for signal in lengths.totals:
        ready = bought(rig, leads, lengths, signal=signal)
        for mark, price in ready.prices.items():
            if price is not None:
                value = money(*amount_and_currency(price))
                yield Reason(
                    f"{mark}.price",
                    value,
                    "",
                    f"{price.typed}, as stated",
                    (stated(f"premade {signal} lead", price),),
                    "a stated figure stands",
                    STATED,
                )
        for mark, mass in ready.masses.items():
            if mass is not None:
                yield as_stated(f"{mark}.mass", f"what a premade {signal} lead weighs", mass, "g", grams(mass.value))
        yield from _sums(signal, ready)


def _sums(signal: str, ready: Bought) -> Iterator[Reason]:
    rule = "the sum over the bought leads of the class whose figure is stated"
    if ready.price:
        known = {mark: amount_and_currency(price) for mark, price in ready.prices.items() if price is not None}
        sums = [
            " + ".join(str(amount) for amount, its in known.values() if its == currency) + f" = {total}"
            for total in ready.price.split(", ")
            for currency in total.split()[1:]
        ]
        inputs = tuple(derived(mark, money(*price), "", f"{mark}.price") for mark, price in known.items())
        formula = f"{'; '.join(sums)}{_without(ready.prices)}"
        yield Reason(f"{signal}.bought-price", ready.price, "", formula, inputs, rule, ARITHMETIC)
    if ready.grams is not None:
        heavy = {mark: grams(mass.value) for mark, mass in ready.masses.items() if mass is not None}
        inputs = tuple(derived(mark, term, "g", f"{mark}.mass") for mark, term in heavy.items())
        formula = f"{' + '.join(heavy.values())} = {plain(ready.grams)}{_without(ready.masses)}"
        yield Reason(f"{signal}.bought-mass", plain(ready.grams), "g", formula, inputs, rule, ARITHMETIC)


def _without(figures: Mapping[str, object]) -> str:
    missing = [mark for mark, figure in figures.items() if figure is None]
    return f", without {', '.join(missing)}" if missing else ""


REASONS = bought_leads
