"""A current, a share, a polarity -> how a cell of the power table writes it; `?` where not known."""

from __future__ import annotations

from rigc.model.fact import Fact
from rigc.reports.content import Cell


def fact_cell(fact: Fact[float] | None) -> Cell:
    """A stated figure, marked where it is assumed."""
    return Cell("?") if fact is None else Cell(f"{fact.value:g}", mark="assumed" if assumed(fact) else "")


def assumed(fact: Fact[float] | None) -> bool:
    """Whether a figure is assumed."""
    return fact is not None and fact.assumed


def polarity(stated: str | None, current: str | None) -> str:
    """The polarity of a plug; AC has none."""
    return "none (AC)" if current == "ac" else stated or "?"
