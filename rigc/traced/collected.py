"""Results -> every figure in them, however deep they hold it.

A record names in `TOLD` the properties that make figures only when they are asked for.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.record import Record
from rigc.traced.figure import Told


def figures(value: Any) -> Iterator[Told]:
    """The figures that a result holds, and after each those that it rests on; one may come more than once."""
    yield from _within(value, {})


def _within(value: Any, seen: dict[int, Any]) -> Iterator[Told]:
    if isinstance(value, Told):
        if id(value) not in seen:
            seen[id(value)] = value  # kept alive: one made when asked for would leave its id to the next
            yield value
            for behind in value.behind():
                yield from _within(behind, seen)
    elif isinstance(value, Record):
        if id(value) not in seen and not type(value).__module__.startswith("rigc.model."):
            seen[id(value)] = value
            for name in (*value.FIELDS, *getattr(type(value), "TOLD", ())):
                yield from _within(getattr(value, name), seen)
    elif isinstance(value, dict):
        for each in value.values():
            yield from _within(each, seen)
    elif isinstance(value, (tuple, list)):
        for each in value:
            yield from _within(each, seen)
