"""Facts as stated -> cells that print what was typed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from rigc.diagnostics.decimals import decimals
from rigc.model.fact import Fact, Quantity
from rigc.model.jacks import Levels
from rigc.reports.content import Cell


def stated(fact: Fact[Any] | None) -> Cell:
    """What was typed, marked where it was assumed; empty where nothing is stated."""
    if fact is None:
        return Cell("")
    return Cell(_typed(fact), mark="assumed" if fact.assumed else "")


def stated_all(facts: Iterable[Fact[Any] | None], between: str = ", ") -> Cell:
    """Several facts in one cell, those that are not stated left out."""
    known = [fact for fact in facts if fact is not None]
    return Cell(between.join(map(_typed, known)), mark="assumed" if any(f.assumed for f in known) else "")


def lead_cell(length: Quantity | None, cable: str | None) -> Cell:
    """An instrument's lead: `6 m of stage-coax`; empty where none is stated."""
    return Cell("") if length is None else Cell(f"{length.typed} of {cable}", mark="assumed" if length.assumed else "")


def _typed(fact: Fact[Any]) -> str:
    """A number below 0 with a minus sign."""
    negative = isinstance(fact.value, float) and fact.typed.startswith("-")
    return f"\N{MINUS SIGN}{fact.typed[1:]}" if negative else fact.typed


def in_millimetres(fact: Fact[float]) -> str:
    """`70`, `70 ± 1`: a size without its unit, which the column or its heading bears."""
    off = "" if fact.spread is None else f" ± {decimals(fact.spread.most - fact.value)}"
    return f"{decimals(fact.value)}{off}"


def in_metres(fact: Fact[float]) -> str:
    """`3`, `3 ± 0.1`: a length in mm as metres, without the unit."""
    off = "" if fact.spread is None else f" ± {(fact.spread.most - fact.value) / 1000:g}"
    return f"{fact.value / 1000:g}{off}"


def words(*parts: str) -> Cell:
    """Words with commas between them, the empty ones left out."""
    return Cell(", ".join(part for part in parts if part))


def level_cell(levels: Levels) -> Cell:
    """`-20 dBu, peak 4 dBu, max 6 dBu, full at -40 dBu`: what is stated of a jack's levels."""
    told = (
        ("", levels.nominal_dbu),
        ("peak ", levels.peak_dbu),
        ("max ", levels.maximum_dbu),
        ("full at ", levels.sensitivity_dbu),
    )
    known = [(word, fact) for word, fact in told if fact is not None]
    text = ", ".join(f"{word}{fact.typed}" for word, fact in known)
    return Cell(text.replace("-", "\N{MINUS SIGN}"), mark="assumed" if any(fact.assumed for _, fact in known) else "")
