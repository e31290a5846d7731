"""Two facts of one thing that can't both be true: a window that leaves out what is needed, less at switch-on than in use, a peak
below its nominal level, a passive unit that is digital."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.diagnostics.mend import Delete, Mend
from rigc.model.fact import Fact
from rigc.model.jacks import Levels
from rigc.model.resolve.context import Context
from rigc.model.scope import SAID_TWICE
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY


def check_supply_facts(context: Context, name: str, fields: dict[str, Any]) -> None:
    """Of a unit: what it needs lies in what it accepts, and it draws no less at switch-on than in use."""
    needs, low, high = (fields.get(each) for each in ("volts", "accepts_low_v", "accepts_high_v"))
    if needs is not None and low is not None and high is not None and not low.value <= needs.value <= high.value:
        _told(
            context,
            low,
            needs,
            f"'{name}' needs {needs.typed} and accepts {low.value:g}..{high.value:g} V, which leaves that out",
            "write a window that holds what it needs",
        )
    draws, starts = fields.get("draws_ma"), fields.get("starts_ma")
    if draws is not None and starts is not None and starts.value < draws.value:
        _told(
            context,
            starts,
            draws,
            f"'{name}' starts with {starts.typed} and draws {draws.typed}: the current at switch-on is no less than that in use",
            "measure both again, or delete the line `starts`",
        )


def check_flags(context: Context, name: str, flags: Sequence[Any]) -> None:
    """Of a unit: what is passive is not digital."""
    by_word = {flag.words.text: flag for flag in flags}
    passive, digital = by_word.get("passive"), by_word.get("digital")
    if passive and digital:
        context.report(
            SAID_TWICE.at(
                digital.span,
                f"'{name}' is passive and digital; what is digital takes power",
                label="this can't be",
                also=(Label(passive.span, "with this"),),
                mends=tuple(Mend(f"delete '{each}'", (Delete(each.span),)) for each in (passive, digital)),
            )
        )


def check_levels(context: Context, levels: Levels) -> None:
    """Of a jack: its peak is not below its nominal level."""
    nominal, peak = levels.nominal_dbu, levels.peak_dbu
    if nominal is not None and peak is not None and peak.value < nominal.value:
        _told(
            context,
            peak,
            nominal,
            f"a peak of {peak.typed} is below the nominal level of {nominal.typed}",
            f"measure both again; if they were interchanged, write {peak.typed} peak {nominal.typed}",
        )


def _told(context: Context, here: Fact[float], other: Fact[float], message: str, advice: str) -> None:
    context.report(
        WRONG_QUANTITY.at(
            here.span,
            message,
            label="this can't be",
            also=(Label(other.span, "with this"),),
            help=advice,
        )
    )
