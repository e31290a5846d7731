"""A stated value -> the words in which a comparison tells it, and what of it counts when two are compared."""

from __future__ import annotations

from typing import Any

from rigc.model.fact import Fact
from rigc.model.jacks import Connector, InternalPath, LoopJacks, Phantom, Port
from rigc.model.things import Area, Battery, Fuse, MainsRange, Pack, Spot
from rigc.record import Record
from rigc.source import Span

NONE = "none"


def words(value: Any) -> str:
    """The value as text: a fact as it was typed, a list with commas, nothing as `none`."""
    if value is None or value == () or value == frozenset() or value == "":
        return NONE
    if isinstance(value, Fact):
        return value.typed
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, frozenset):
        return ", ".join(sorted(map(words, value)))
    if isinstance(value, tuple) and not isinstance(value, Port):
        return ", ".join(words(each) for each in value if not isinstance(each, Span))
    return _record(value) if isinstance(value, Record) else str(value)


def exact(value: Any) -> Any:
    """The value without its places in the source and without how it was typed, but with what it may be off by: what counts when two are compared."""
    if isinstance(value, Fact):
        off = value.spread
        return exact(value.value) if off is None else (exact(value.value), off.least, off.most)
    if isinstance(value, Port):
        return "Port", *value
    if isinstance(value, Record):
        return type(value).__name__, *(exact(part) for part in _parts(value))
    if isinstance(value, tuple):
        return tuple(exact(part) for part in value if not isinstance(part, Span))
    if isinstance(value, frozenset):
        return tuple(sorted(map(exact, value)))
    if isinstance(value, dict):
        return tuple((key, exact(part)) for key, part in value.items())
    return value


def _parts(value: Record) -> list[Any]:
    return [part for name in value.FIELDS if not isinstance(part := getattr(value, name), Span)]


def _record(value: Record) -> str:
    if isinstance(value, Connector):
        return str(value)
    if isinstance(value, Spot):
        return " ".join(filter(None, (value.name, f"at {value.x_mm:g}, {value.y_mm:g} mm", value.action)))
    if isinstance(value, Phantom):
        return value.how if value.volts is None else f"{value.how} {value.volts.typed}"
    if isinstance(value, Area):
        return f"{value.what} {value.width_mm:g} x {value.depth_mm:g} mm at {value.x_mm:g}, {value.y_mm:g} mm"
    if isinstance(value, InternalPath):
        return f"{value.start} -> {value.end} {value.how}"
    if isinstance(value, LoopJacks):
        return f"{value.number}: {value.send} to {value.back}" + (f", {value.mix}" if value.mix else "")
    if isinstance(value, Fuse):
        return value.words if value.at_v is None else f"{value.words} at {value.at_v.typed}"
    if isinstance(value, MainsRange):
        return value.typed
    if isinstance(value, Battery):
        return f"{value.kind}, only" if value.only else value.kind
    if isinstance(value, Pack):
        held, cells = (
            None if each is None else each.typed for each in (value.energy_wh or value.charge_mah, value.cells_v)
        )
        said = " ".join(filter(None, (value.kind, held, cells and f"at {cells}")))
        return f"{said}, only" if value.only else said
    return " ".join(words(part) for part in _parts(value) if part not in (None, (), "", False))
