"""Reasons -> JSON: every value with its formula, its inputs and their places, its rule and the source of that."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

from rigc.analysis.reasoning import Reasoning
from rigc.diagnostics.machine import place_of
from rigc.model.fact import Provenance
from rigc.output.escapes import spelled_out
from rigc.traced.reason import Input, Reason
from rigc.traced.told_range import ToldPart, ToldRange

FORMAT = 1  # counts up when a reader of the old shape would go wrong


def render(reasoning: Reasoning, reasons: tuple[Reason, ...], shown: Callable[[str], str]) -> str:
    """The reasons as JSON, UTF-8, indented; lines and columns count from 1. `why` names the reason of an input."""
    held = [_reason(reasoning, reason, shown) for reason in reasons]
    return spelled_out(json.dumps({"format": FORMAT, "reasons": held}, ensure_ascii=False, indent=2)) + "\n"


def _reason(reasoning: Reasoning, reason: Reason, shown: Callable[[str], str]) -> dict[str, Any]:
    return {
        "name": reason.name,
        "value": reason.value,
        "unit": reason.unit,
        "formula": reason.formula,
        "assumed": reasoning.leans(reason),
        "range": _range(reasoning.range_of(reason), shown),
        "inputs": [_input(reasoning, each, shown) for each in reason.inputs],
        "rule": reason.rule,
        "source": reason.source,
    }


def _range(told: ToldRange | None, shown: Callable[[str], str]) -> dict[str, Any] | None:
    if told is None:
        return None
    least, most = told.ends or (None, None)
    return {
        "least": least,
        "most": most,
        "at_most": told.ends is not None and not told.exact,
        "facts": [_part(each, shown) for each in told.parts],
        "beside": [_part(each, shown) for each in told.beside],
    }


def _part(part: ToldPart, shown: Callable[[str], str]) -> dict[str, Any]:
    least, most = part.ends or (None, None)
    return {
        "name": part.fact.label,
        "value": part.fact.fact.typed,
        "off_by": part.spread.typed,
        "least": least,
        "most": most,
        "place": place_of(part.fact.fact.span, shown),
    }


def _input(reasoning: Reasoning, one: Input, shown: Callable[[str], str]) -> dict[str, Any]:
    return {
        "name": one.name,
        "value": one.value,
        "unit": one.unit,
        "place": place_of(one.span, shown),
        "provenance": _provenance(one.provenance, shown),
        "assumed": reasoning.assumed(one),
        "why": one.why or None,
        "source": one.source or None,
    }


def _provenance(known: Provenance | None, shown: Callable[[str], str]) -> dict[str, Any] | None:
    if known is None:
        return None
    return {
        "kind": known.kind,
        "date": known.date or None,
        "by": known.by or None,
        "place": place_of(known.span, shown),
    }
