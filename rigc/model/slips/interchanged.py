"""The place that a statement tells -> the mend that interchanges its x and y."""

from __future__ import annotations

import re

from rigc.diagnostics.mend import Mend, Replace
from rigc.source import Span

_AMOUNT = r"[+-]?\d+(?:\.\d+)?(?:[ \t]*[a-z]+)?"
_PLACE = re.compile(rf"(?:^|\bat[ \t]+)({_AMOUNT})[ \t]*,[ \t]*({_AMOUNT})")
_NUMBER = re.compile(r"[+-]?\d+(?:\.\d+)?")


def interchanged(span: Span) -> tuple[Mend, ...]:
    """For a statement with `at X, Y`, or for these numbers alone; a unit that both share stays behind the last one."""
    found = _PLACE.search(span.text)
    if found is None:
        return ()
    x, y = found[1], found[2]
    unit = _NUMBER.sub("", y) if _NUMBER.fullmatch(x) else ""
    right = f"{y.removesuffix(unit) if unit else y}, {x}{unit}"
    text = f"{span.text[: found.start(1)]}{right}{span.text[found.end(2) :]}"
    return (Mend(f"write {right}, if x and y were interchanged", (Replace(span, text),)),)
