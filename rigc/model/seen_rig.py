"""A rig of which each computation reads some fields, and of things some facts -> which these were; two rigs -> in which they differ."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from functools import cache
from typing import Any

from rigc.model.rig import Rig

THINGS = ("instruments", "units", "supplies", "mains_strips", "panels")
"""The fields in which things stand by their names: `units` is read where their names are, `units.mass_kg` where the masses are, and
`units.*` where they are read as a whole."""
_MOST = 150
"""With more things than that, each is read as a whole: to look over so many shoulders takes longer than to compute."""


class Seen:
    """A record as one computation sees it. Two are the same where what was read of both is, and either can look at the other's record."""

    _of: Any
    _reads: set[str]

    def _record(self) -> Any:
        """The record itself, of which all counts as read."""
        raise NotImplementedError

    def sees(self, other: Any) -> bool:
        """Whether all that either has read holds the same objects in both records."""
        raise NotImplementedError

    def __eq__(self, other: object) -> bool:
        there = other.__dict__["_of"] if isinstance(other, Seen) else other
        if self.__dict__["_of"] is there:
            return True
        return bool(self._record() == (other._record() if isinstance(other, Seen) else other))

    def __hash__(self) -> int:
        return hash(self._record())

    def __repr__(self) -> str:
        return repr(self._record())

    def __reduce_ex__(self, protocol: Any) -> Any:
        return self._record().__reduce_ex__(protocol)

    def replace(self, **changed: Any) -> Any:
        """A copy of the record with the named fields changed."""
        return self._record().replace(**changed)


def looked_at_finely(rig: Rig) -> bool:
    """Whether it pays to write down which facts of its things are read; it does not where these are seen by another computation already."""
    things = [each for name in THINGS for each in getattr(rig, name).values()]
    return len(things) <= _MOST and not any(isinstance(each, Seen) for each in things)


class SeenRig(Seen, Rig):
    """A rig as one computation sees it: which of its fields it reads is written down; `finely`, which facts of things, too."""

    def __init__(self, rig: Rig, reads: set[str], finely: bool = False) -> None:
        state = self.__dict__
        state["_of"], state["_reads"] = rig, reads
        state["_finely"] = finely

    def look_at(self, rig: Rig) -> None:
        """Reads another rig from now on. What was read of it differs only where what came of that is the same: things that are no more
        are in nothing that came of it, and those that are new are read by who asks for them."""
        state = self.__dict__
        before, state["_of"] = state["_of"], rig
        for name in THINGS if state["_finely"] else ():
            if name in state and getattr(rig, name) is not getattr(before, name):
                seen, now = state[name], getattr(rig, name)
                for key in seen.keys() & now.keys():
                    seen[key].__dict__["_of"] = now[key]
                if [*seen] != [*now]:
                    del state[name]

    def sees(self, other: Any) -> bool:
        reads: set[str] = self.__dict__["_reads"] | other.__dict__["_reads"]
        return reads.isdisjoint(differing(self.__dict__["_of"], other.__dict__["_of"]))

    def _read(self, name: str) -> Any:
        state = self.__dict__
        value, reads = getattr(state["_of"], name), state["_reads"]
        reads.add(name)
        if name in THINGS:
            if state["_finely"]:
                value = {key: _seen_thing(thing, name, key, reads) for key, thing in value.items()}
            else:
                reads.add(f"{name}.*")
        state[name] = value
        return value

    def _record(self) -> Any:
        state = self.__dict__
        state["_reads"].update(Rig.FIELDS, (f"{name}.*" for name in THINGS))
        return state["_of"]


class SeenThing(Seen):
    """A unit, a supply or the like as one computation sees it."""

    def sees(self, other: Any) -> bool:
        one, two = self.__dict__, other.__dict__
        here, there, family = one["_of"], two["_of"], one["_family"]
        if here is there:
            return True
        reads = one["_reads"] | two["_reads"]
        if (family, one["_key"]) != (two["_family"], two["_key"]):
            return False
        return bool(reads.isdisjoint(_of_thing(here, there, family)))

    def _read(self, name: str) -> Any:
        state = self.__dict__
        state["_reads"].add(f"{state['_family']}.{name}")
        state[name] = value = state["_of"].__dict__[name]
        return value

    def _record(self) -> Any:
        state = self.__dict__
        state["_reads"].add(f"{state['_family']}.*")
        return state["_of"]


class _Field:
    """A field that writes down that it is read, once; a class may have a default, which nobody would else notice to be read."""

    def __init__(self, name: str) -> None:
        self._name = name

    def __get__(self, seen: Any, owner: type[Any]) -> Any:
        return self if seen is None else seen._read(self._name)


for _name in Rig.FIELDS:
    setattr(SeenRig, _name, _Field(_name))


@cache
def _class_of(kind: Any) -> type[Any]:
    """The class of what stands in for records of a kind."""
    made = type(f"Seen{kind.__name__}", (SeenThing, kind), {})
    for name in kind.FIELDS:
        setattr(made, name, _Field(name))
    return made


def _seen_thing(thing: Any, family: str, key: str, reads: set[str]) -> Any:
    made = object.__new__(_class_of(type(thing)))  # type: ignore[arg-type]
    made.__dict__.update(_of=thing, _family=family, _key=key, _reads=reads)
    return made


def whole(rig: Rig) -> Rig:
    """The rig itself, of which all counts as read."""
    record: Rig = rig._record() if isinstance(rig, SeenRig) else rig
    return record


def changed(thing: Any, **fields: Any) -> Any:
    """The thing with these fields changed, of which the others are still seen to be read. It is not to be held longer than the
    computation takes: it looks at this thing, whatever comes in its place."""
    if not isinstance(thing, SeenThing):
        return thing.replace(**fields)
    there = thing.__dict__
    made = _seen_thing(there["_of"].replace(**fields), there["_family"], there["_key"], there["_reads"])
    made.__dict__.update(fields)
    return made


def differing(rig: Rig, other: Rig, left_out: Collection[str] = ()) -> frozenset[str]:
    """What does not hold the same objects, as it is told in what was read; some fields left out."""
    names = (name for name in Rig.FIELDS if name not in left_out and getattr(rig, name) is not getattr(other, name))
    return frozenset(each for name in names for each in (_of_things(rig, other, name) if name in THINGS else (name,)))


def _of_things(rig: Rig, other: Rig, family: str) -> Iterator[str]:
    here, there = getattr(rig, family), getattr(other, family)
    yield f"{family}.*"
    if [*here] != [*there]:
        yield family
    for name, thing in here.items():
        if name in there and thing is not there[name]:
            yield from _of_thing(thing, there[name], family)


def _of_thing(thing: Any, other: Any, family: str) -> Iterator[str]:
    yield f"{family}.*"
    if type(thing) is not type(other):
        yield family
        return
    for name in thing.FIELDS:
        if thing.__dict__[name] is not other.__dict__[name]:
            yield f"{family}.{name}"
