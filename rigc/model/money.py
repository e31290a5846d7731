"""A sum of money as stated, `450 EUR` -> its amount and its currency; several of them summed up, each currency by itself."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from rigc.model.fact import Choice


def amount_and_currency(price: Choice) -> tuple[Decimal, str]:
    """Both parts of one sum."""
    amount, currency = price.value.split()
    return Decimal(amount), currency


def summed(prices: Iterable[Choice | None]) -> dict[str, Decimal]:
    """The sum of those that are stated by currency, in the order in which the currencies come."""
    sums: dict[str, Decimal] = {}
    for price in prices:
        if price is not None:
            amount, currency = amount_and_currency(price)
            sums[currency] = sums.get(currency, Decimal(0)) + amount
    return sums
