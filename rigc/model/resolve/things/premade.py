"""Statements of premade leads -> the lengths that are had, and what each costs and weighs."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import TypeVar

from rigc.diagnostics.diagnostic import Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.fact import Choice, Quantity
from rigc.model.resolve.context import Context
from rigc.model.scope import SAID_TWICE
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.measures import LEAD, MASS
from rigc.model.units.quantities import money
from rigc.source import Span
from rigc.syntax import nodes

T = TypeVar("T")
ByLength = dict[str, dict[float, T]]


def premade(context: Context) -> tuple[dict[str, tuple[float, ...]], ByLength[Choice], ByLength[Quantity]]:
    """By signal the lengths in mm, ascending, and the price and mass (in kg) of each length that has one.

    A later statement of a signal takes the place of an earlier one.
    """
    lengths: dict[str, tuple[float, ...]] = {}
    prices: ByLength[Choice] = {}
    masses: ByLength[Quantity] = {}
    for node in context.of(nodes.Premade):
        had = context.shared_chosen(LEAD, *node.lengths)
        _each_length_once(context, had)
        lengths[node.signal.text] = tuple(sorted({length.value for length in had if length is not None}))
        prices[node.signal.text] = _each(context, node, node.prices, had, "price", _priced)
        masses[node.signal.text] = _each(context, node, node.masses, had, "mass", _weighed)
        _heavier(context, masses[node.signal.text])
    return lengths, prices, masses


def _each_length_once(context: Context, had: list[Quantity | None]) -> None:
    first: dict[float, Quantity] = {}
    for length in (each for each in had if each is not None):
        if first.setdefault(length.value, length) is not length:
            context.report(
                SAID_TWICE.at(
                    length.span,
                    f"the length {length.value:g} mm stands twice in this list",
                    label="the same again",
                    also=(Label(first[length.value].span, "first named here"),),
                    help="name each length once, and as many prices and masses as lengths",
                )
            )


def _each(
    context: Context,
    node: nodes.Premade,
    stated: tuple[nodes.Amount, ...] | None,
    lengths: list[Quantity | None],
    what: str,
    read: Callable[[Context, tuple[nodes.Amount, ...]], list[T | None]],
) -> dict[float, T]:
    """What is stated of each length; a finding where there are more or fewer of it than lengths."""
    if stated is None:
        return {}
    if len(stated) != len(lengths):
        words = {"price": "prices", "mass": "masses"}[what]
        context.report(
            WRONG_QUANTITY.at(
                node.span,
                f"{len(lengths)} lengths of premade {node.signal} leads have {len(stated)} {words}",
                label=f"one {what} for each length",
                help=f"write as many {words} as lengths, in the same order",
                mends=_with_points(stated) if len(stated) == 2 * len(lengths) else (),
            )
        )
        return {}
    pairs = zip(lengths, read(context, stated), strict=True)
    return {length.value: each for length, each in pairs if length is not None and each is not None}


def _with_points(stated: tuple[nodes.Amount, ...]) -> tuple[Mend, ...]:
    """`4,50, 5,50 EUR`: each two numbers as one with a point between, where none but the last has a unit."""
    if any(each.unit is not None for each in stated[:-1]):
        return ()
    pairs = list(zip(stated[::2], stated[1::2], strict=True))
    edits = tuple(
        Replace(
            Span(one.span.source, one.number.span.start, other.number.span.end),
            f"{one.number.text}.{other.number.text}",
        )
        for one, other in pairs
    )
    written = ", ".join(edit.text for edit in edits)
    return (Mend(f"write {written} with points", edits),)


def _priced(context: Context, stated: tuple[nodes.Amount, ...]) -> list[Choice | None]:
    unit = stated[-1].unit
    return [money(each.replace(unit=each.unit or unit), context.report, None) for each in stated]


def _heavier(context: Context, masses: dict[float, Quantity]) -> None:
    """A finding where a longer lead of one kind weighs less."""
    in_order = [masses[length] for length in sorted(masses)]
    for shorter, longer in pairwise(in_order):
        if longer.value < shorter.value:
            context.report(
                WRONG_QUANTITY.at(
                    longer.span,
                    f"a longer lead weighs {longer.typed}, and a shorter one {shorter.typed}",
                    label="lighter than a shorter one",
                    also=(Label(shorter.span, "the shorter one"),),
                    help="write the masses in the order of the lengths",
                )
            )
            return


def _weighed(context: Context, stated: tuple[nodes.Amount, ...]) -> list[Quantity | None]:
    return context.shared(MASS, *stated)
