"""What goes into a formula -> its digits: as many as the printed result can be reckoned from by hand."""

from __future__ import annotations

from collections.abc import Callable

from rigc.diagnostics.decimals import decimals

_MOST_MORE = 7  # beyond the least; a figure of the sizes that occur has no more digits that mean anything


def operands(shown: Callable[..., str], *values: float, least: int = 2) -> tuple[str, ...]:
    """The texts of `values` with the fewest decimals, at least `least`, from which `shown` comes to what it makes of
    the values themselves.

    A sheet rounds each figure once, from what was computed; a formula that repeats the rounded figures would round
    twice and come to another last digit: 7.36 / 120 × 1000 is 61.3, where 7.364 / 120 × 1000 is the 61.4 that is told.
    """
    exact = shown(*values)
    more = 0
    while more < _MOST_MORE and shown(*(_told(value, least, more) for value in values)) != exact:
        more += 1
    return tuple(_text(value, least, more) for value in values)


def _text(value: float, least: int, more: int) -> str:
    return decimals(value, least + more)


def _told(value: float, least: int, more: int) -> float:
    """The number that the text says."""
    return float(decimals(value, least + more).replace("−", "-"))
