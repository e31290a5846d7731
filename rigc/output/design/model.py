"""The whole computed design as plain data: what the rig says, what rigc chose and reckoned, and what it finds wrong.

Its shape is told by `rigc/output/design/model_schema.py`, whose version counts up when a reader of the old shape would go wrong.
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable, Iterable
from typing import Any

from rigc import __version__
from rigc.analysis.reasoning import told
from rigc.analysis.results import Results
from rigc.analysis.revision.aspects import Aspects
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.machine import place_of, record
from rigc.output.design.model_schema import VERSION
from rigc.output.escapes import spelled_out
from rigc.traced.figure import Figure, Lacking, Told, assumed, incomplete
from rigc.traced.reason import NOT_KNOWN

_NUMBER = re.compile(r"(?P<number>[-−]?\d+(?:\.\d+)?)(?: (?P<unit>[^\s\d]\S*))?")
_DIGITS = 9  # of a float that say something; what is behind them is how the sum was grouped

Shown = Callable[[str], str]


def render(results: Results, findings: Iterable[Diagnostic], digest: str, shown: Shown = str) -> str:
    """The model as JSON, UTF-8, indented. `digest` is the hash of the sources; `shown` turns their names into paths."""
    return (
        spelled_out(json.dumps(model(results, findings, digest, shown), ensure_ascii=False, indent=2, allow_nan=False))
        + "\n"
    )


def model(results: Results, findings: Iterable[Diagnostic], digest: str, shown: Shown = str) -> dict[str, Any]:
    """The model as values that JSON knows. Lengths, currents and the like are in the unit that stands beside them."""
    head = results.rig.head
    return {
        "version": VERSION,
        "rigc": __version__,
        "rig": {
            "name": head.name,
            "title": head.title,
            "client": head.client,
            "revision": head.letter,
            "date": head.date,
            "drawn": head.drawn,
            "checked": head.checked,
            "source": digest,
        },
        "things": _things(results.get(Aspects), shown),
        "figures": [_figure(each) for each in told(results).values()],
        "findings": [record(each, shown) for each in findings],
    }


def _things(aspects: Aspects, shown: Shown) -> list[dict[str, Any]]:
    """What can be said of each thing of the rig, stated and chosen, kind by kind."""
    found: dict[tuple[str, str], dict[str, Any]] = {}
    for each in aspects.by_key.values():
        thing = found.setdefault((each.kind, each.name), {"kind": each.kind, "name": each.name, "said": {}})
        thing["said"][each.field or "is"] = {
            "text": each.text,
            "origin": each.origin,
            "place": place_of(each.span, shown),
        }
    return list(found.values())


def _figure(one: Told) -> dict[str, Any]:
    """A figure by the name that `rigc why` takes. The number is as it was reckoned, the text as a sheet prints it."""
    value, unit = _value(one)
    return {
        "name": one.name,
        "value": value,
        "unit": unit,
        "text": f"{one.text} {one.unit}".rstrip(),
        "called": one.label,
        "assumed": assumed(one),
        "incomplete": incomplete(one),
        "rule": one.rule,
        "source": one.source,
    }


def _value(one: Told) -> tuple[float | str | None, str]:
    """A number where it is one, with its unit; the text of what is none; nothing where it is not known."""
    if isinstance(one, Lacking) or one.text == NOT_KNOWN:
        return None, one.unit
    said = _NUMBER.fullmatch(one.text)
    if isinstance(one, Figure) and (one.unit or (said and not said["unit"])):
        reckoned = float(one) / one.shown.size
        return (_plain(reckoned), one.unit) if math.isfinite(reckoned) else (one.text, one.unit)
    if said:
        return _plain(float(said["number"].replace("−", "-"))), said["unit"] or one.unit
    return one.text, one.unit


def _plain(number: float) -> float:
    short = float(f"{number:.{_DIGITS}g}")
    return int(short) if short.is_integer() and abs(short) < 10**_DIGITS else short
