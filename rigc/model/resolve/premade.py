"""Statements of premade leads -> the lengths that are had, and what each costs."""

from __future__ import annotations

from rigc.model.fact import Choice, Quantity
from rigc.model.measures import LEAD
from rigc.model.quantities import money
from rigc.model.resolve.context import Context
from rigc.model.wrong_quantity import WRONG_QUANTITY
from rigc.syntax import nodes


def premade(context: Context) -> tuple[dict[str, tuple[float, ...]], dict[str, dict[float, Choice]]]:
    """By signal the lengths in mm, ascending, and the price of each length that has one.

    A later statement of a signal takes the place of an earlier one.
    """
    lengths: dict[str, tuple[float, ...]] = {}
    prices: dict[str, dict[float, Choice]] = {}
    for node in context.of(nodes.Premade):
        had = context.shared(LEAD, *node.lengths)
        lengths[node.signal.text] = tuple(sorted({length.value for length in had if length is not None}))
        prices[node.signal.text] = {} if node.prices is None else _priced(context, node, node.prices, had)
    return lengths, prices


def _priced(
    context: Context, node: nodes.Premade, stated: tuple[nodes.Amount, ...], lengths: list[Quantity | None]
) -> dict[float, Choice]:
    if len(stated) != len(lengths):
        context.report(
            WRONG_QUANTITY.at(
                node.span,
                f"{len(lengths)} lengths of premade {node.signal} leads have {len(stated)} prices",
                label="one price for each length",
                help="write as many prices as lengths, in the same order",
            )
        )
        return {}
    unit = stated[-1].unit
    prices = [money(each.replace(unit=each.unit or unit), context.report, None) for each in stated]
    pairs = zip(lengths, prices, strict=True)
    return {length.value: price for length, price in pairs if length is not None and price is not None}
