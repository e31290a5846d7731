"""A rig of which each computation reads some fields -> which these were; two rigs -> in which fields they differ."""

from __future__ import annotations

from typing import Any

from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class SeenRig(Rig):
    """A rig as one computation sees it: which of its fields it reads is written down."""

    def __init__(self, rig: Rig, reads: set[str]) -> None:
        self.__dict__["_seen"] = rig, reads
        for name in self.DEFAULTS:  # a class has them, so that nobody would notice that they are read
            self.__dict__[name] = getattr(rig, name)
            reads.add(name)

    def __getattr__(self, name: str) -> Any:
        rig, reads = self.__dict__["_seen"]
        if name not in self.FIELDS:
            raise AttributeError(name)
        reads.add(name)
        self.__dict__[name] = value = getattr(rig, name)
        return value

    def _whole(self) -> Rig:
        rig, reads = self.__dict__["_seen"]
        reads.update(self.FIELDS)
        whole: Rig = rig
        return whole

    def __eq__(self, other: object) -> bool:
        return self._whole() == (other._whole() if isinstance(other, SeenRig) else other)

    def __hash__(self) -> int:
        return hash(self._whole())

    def __repr__(self) -> str:
        return repr(self._whole())

    def replace(self, **changed: Any) -> Any:
        return self._whole().replace(**changed)


def with_same(rig: Rig, other: Rig) -> Rig:
    """The rig, with the objects of another one where it is the same but for places in sources."""
    pairs = ((name, getattr(rig, name), getattr(other, name)) for name in Rig.FIELDS)
    same = {name: there for name, here, there in pairs if name not in Rig.PLACES and _alike(here, there)}
    made: Rig = rig.replace(**same)
    return made


def _alike(one: Any, other: Any) -> bool:
    """Whether all that two parts hold is equal and in one order, places in sources aside."""
    kind = type(one)
    if one is other or kind is not type(other):
        return one is other
    if issubclass(kind, Record):
        here, there = one.__dict__, other.__dict__
        return all(_alike(here[name], there[name]) for name in kind.FIELDS if name not in kind.PLACES)
    if kind is tuple or kind is list:
        return len(one) == len(other) and all(map(_alike, one, other))
    if kind is dict:
        return [*one] == [*other] and all(map(_alike, one.values(), other.values()))
    return kind is Span or bool(one == other)


def differing(rig: Rig, other: Rig) -> tuple[str, ...]:
    """The fields that do not hold the same objects; places in sources count for none."""
    names = (name for name in Rig.FIELDS if name not in Rig.PLACES)
    return tuple(name for name in names if getattr(rig, name) is not getattr(other, name))
