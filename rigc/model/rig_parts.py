"""A rig -> its parts by the names under which it is written down that they are read, each as a digest of all that it holds."""

from __future__ import annotations

import marshal
from collections.abc import Callable, Iterator
from hashlib import sha256
from operator import is_
from typing import Any

from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.seen_rig import THINGS
from rigc.source import Span

Where = Callable[[Span], tuple[Any, ...]]
"""A place as plain values."""


class Parts:
    """The parts of a rig, each with the values in it and what stands for them."""

    def __init__(self, rig: Rig, where: Where, like: Parts | None = None) -> None:
        """What stands for a part is taken from another rig, whose places are told in the same way, where that holds the same objects."""
        plain, held = _Plain(where), {} if like is None else like._held
        self._held: dict[str, tuple[list[Any], str]] = {}
        for name, values in _parts(rig):
            known = held.get(name)
            same = known is not None and len(known[0]) == len(values) and all(map(is_, known[0], values))
            self._held[name] = values, known[1] if known is not None and same else _digest(plain.of(values))
        self.digests = {name: each for name, (_, each) in self._held.items()}
        for family in THINGS:  # as a whole
            own = [each for name, each in self.digests.items() if name.partition(".")[0] == family]
            self.digests[f"{family}.*"] = _digest(own)


def digest(value: Any, where: Where) -> str:
    """What stands for any value of plain ones, places and records."""
    return _digest(_Plain(where).of(value))


def _digest(plain: Any) -> str:
    return sha256(marshal.dumps(plain, 0)).hexdigest()[:24]


def _parts(rig: Rig) -> Iterator[tuple[str, list[Any]]]:
    for name in Rig.FIELDS:
        value = getattr(rig, name)
        if name not in THINGS:
            yield name, [value]
            continue
        yield name, [(key, type(thing).__name__) for key, thing in value.items()]
        for field in dict.fromkeys(field for thing in value.values() for field in thing.FIELDS):
            yield f"{name}.{field}", [thing.__dict__.get(field) for thing in value.values()]


class _Plain:
    """Values as lists, texts and numbers, in which nothing is told by where else the same object stands."""

    def __init__(self, where: Where) -> None:
        self._where = where
        self._known: dict[int, Any] = {}

    def of(self, value: Any) -> Any:
        """Raises TypeError for what is no plain value, no place and no record of these."""
        kind = type(value)
        if kind is str or value is None or kind is float or kind is int or kind is bool:
            return value
        if kind is Span:
            return self._where(value)
        if kind is Fact:
            state = value.__dict__
            return [
                self.of(state["value"]),
                state["typed"],
                self._where(state["span"]),
                self._once(state["provenance"]),
                self._once(state["measure"]),
                self._once(state["spread"]),
            ]
        return self._held(value, kind)

    def _once(self, value: Any) -> Any:
        """As `of`, of what many facts share."""
        if value is None:
            return None
        found = self._known.get(id(value))
        if found is None:
            found = self._known[id(value)] = self._held(value, type(value))
        return found

    def _held(self, value: Any, kind: type[Any]) -> Any:
        if kind is tuple or kind is list:
            return [kind is tuple, [*map(self.of, value)]]
        if kind is dict:
            return [[*map(self.of, value)], [*map(self.of, value.values())]]
        if kind is frozenset or kind is set:
            return sorted(map(self.of, value), key=repr)
        if kind is bytes:
            return value
        if kind is Port:
            return [kind.__name__, [*value]]
        state = value.__dict__
        return [kind.__name__, [self.of(state[name]) for name in kind.FIELDS]]
