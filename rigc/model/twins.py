"""A value made of texts and its twin, made of texts that differ little -> whether they are the same, place by place; what is the same keeps
the object that it had."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache, partial
from operator import is_
from types import CellType, FunctionType, MethodType
from typing import Any

from rigc.model.jacks import Port
from rigc.model.seen_rig import Seen
from rigc.record import Record
from rigc.source import InCommon, Source, Span

_PLAIN = frozenset((str, int, float, bool, bytes, type(None), Port))
_UNSET = object()
_EMPTY = CellType()


class Places:
    """How places of before stand to those of now: where a thing stands in its source counts for nothing. A thing that is one of `last` again is
    what it was there."""

    def __init__(self, last: Places | None = None) -> None:
        self._stayed = {} if last is None else last._things
        self._things: dict[int, tuple[Any, Any]] = {}

    def same(self, before: Span, now: Span) -> bool:  # noqa: ARG002
        """Whether a place of before is that of now, which nobody moves."""
        return True

    def follows(self, before: Span, now: Span) -> bool:
        """The same where that of now may be moved later."""
        return self.same(before, now)

    def own(self, value: Any) -> Any:
        """A value of now that has no twin."""
        return value

    def thing(self, before: Any, now: Any) -> Any:
        """A thing of now, with the objects of before wherever they are the same."""
        of, stands = self._stayed.get(id(now), (None, None))
        if of is not now or stands is not before:
            stands = joined(before, now, self)
        self._things[id(now)] = now, stands
        return stands


class Copies:
    """Copies of values with other places in them: `place` makes each of its own. What is one object in two values is one in their copies, too, and
    what holds no place is no copy."""

    def __init__(self, place: Callable[[Span], Span]) -> None:
        self._place = place
        self._made: dict[
            int, tuple[Any, Any]
        ] = {}  # by the id of the value, which is held so that the id stays its own

    def of(self, value: Any) -> Any:
        """The copy of a value."""
        kind = type(value)
        if kind in _PLAIN:
            return value
        if kind is tuple or kind is list:
            items = [each if type(each) in _PLAIN else self.of(each) for each in value]
            return value if kind is tuple and all(map(is_, items, value)) else kind(items)
        if kind is dict:
            return {name: self.of(each) for name, each in value.items()}
        if kind is not Span and not issubclass(kind, Record):
            return value
        made = self._made.get(id(value))
        if made is None:
            made = self._made[id(value)] = value, self._place(value) if kind is Span else self._record(value)
        return made[1]

    def _record(self, value: Any) -> Any:
        there, here = value.__dict__, object.__new__(type(value))
        state, same = here.__dict__, True
        for name in value.FIELDS:
            state[name] = each = there[name]
            if type(each) not in _PLAIN:
                state[name] = part = self.of(each)
                same = same and part is each
        return value if same else here

    def stands_for(self, value: Any, copy: Any) -> None:
        """What is to be taken for the copy of a value."""
        self._made[id(value)] = value, copy


class MovedPlaces(Places):
    """Places that an edit moved and did not touch: each is the same as before, and from then on lies where its twin does, and goes where
    that goes. What comes new has places of its own, so that nobody else's are moved."""

    def __init__(self, last: Places | None = None) -> None:
        super().__init__(last)
        self._edits: dict[tuple[Source, Source], InCommon | None] = {}
        self._old: Source | None = None
        self._new: Source | None = None
        self._edit: InCommon | None = None
        """That of the places asked for last; the next are mostly of the same texts."""
        self._copies = Copies(lambda span: Span(span.source, span.start, span.end))

    def same(self, before: Span, now: Span) -> bool:
        if not self._stays(before, now):
            return False
        before.move(now)
        self._copies.stands_for(now, before)
        return True

    def follows(self, before: Span, now: Span) -> bool:
        same = self.same(before, now)
        if same:
            before.follow(now)
        return same

    def _stays(self, before: Span, now: Span) -> bool:
        old, new = before.source, now.source
        if old is new:
            return before.start == now.start and before.end == now.end
        if old is not self._old or new is not self._new:
            self._old, self._new, self._edit = old, new, self._edit_of(old, new)
        by = None if self._edit is None else self._edit.moved(before.start, before.end)
        return by is not None and before.start + by == now.start and before.end + by == now.end

    def _edit_of(self, old: Source, new: Source) -> InCommon | None:
        if (old, new) not in self._edits:
            same_file = (old.name, old.origin) == (new.name, new.origin)
            self._edits[old, new] = InCommon(old.text, new.text) if same_file else None
        return self._edits[old, new]

    def own(self, value: Any) -> Any:
        """The same with places of its own; what is one object in two values of now is one in these, too."""
        return self._copies.of(value)


def is_same(before: Any, now: Any, places: Places) -> bool:
    """Whether all that two values hold is equal and in one order. What is none of our values, a set of records and what is nested deeper
    than Python calls is never the same as another."""
    try:
        return _Comparison(places).same(before, now)
    except RecursionError:
        return False


class _Comparison:
    """Compares each pair once, for terms are made of terms."""

    def __init__(self, places: Places) -> None:
        self._places = places
        self._known: set[tuple[int, int]] = set()

    def same(self, one: Any, other: Any) -> bool:
        kind = type(one)
        if one is other:
            return True
        if kind is not type(other):
            return False
        if kind in _PLAIN:
            return bool(one == other)
        if kind is Span:
            return self._places.follows(one, other)
        if kind is tuple or kind is list:
            return len(one) == len(other) and all(map(self.same, one, other))
        if kind is dict:
            return (
                len(one) == len(other)
                and all(map(self.same, one, other))
                and all(map(self.same, one.values(), other.values()))
            )
        if kind is frozenset or kind is set:
            return one == other and all(map(_is_plain, one))
        pair = id(one), id(other)
        if pair in self._known:
            return True
        self._known.add(pair)  # what holds itself is asked no second time; one that is not the same ends all
        if issubclass(kind, Seen):
            return bool(one.sees(other))
        if issubclass(kind, Record):
            return self._records(one, other, kind)
        if kind is FunctionType or kind is MethodType or kind is partial:
            return self._functions(one, other)
        return kind.__module__.startswith("rigc.") and self._slotted(one, other, kind)

    def _records(self, one: Record, other: Record, kind: type[Record]) -> bool:
        here, there = one.__dict__, other.__dict__
        for name in kind.FIELDS:
            mine, its = here.get(name, _UNSET), there.get(name, _UNSET)
            if mine is _UNSET or its is _UNSET or not (mine is its or self.same(mine, its)):
                return False
        return True

    def _functions(self, one: Any, other: Any) -> bool:
        """Of one text, with the same values bound in it."""
        if isinstance(one, MethodType):
            return one.__func__ is other.__func__ and self.same(one.__self__, other.__self__)
        if isinstance(one, partial):
            return self.same((one.func, one.args, one.keywords), (other.func, other.args, other.keywords))
        if one.__code__ is not other.__code__:
            return False
        return self.same(_bound(one), _bound(other))

    def _slotted(self, one: Any, other: Any, kind: type[Any]) -> bool:
        """Numbers that tell how they came about, and what they were reckoned from; what is reckoned of these when it is asked for, and was
        not yet, does not count."""
        if hasattr(one, "__dict__"):
            return False
        if issubclass(kind, float) and not float.__eq__(one, other):
            return False
        for name in _slots(kind):  # type: ignore[arg-type]
            here, there = getattr(one, name, _UNSET), getattr(other, name, _UNSET)
            if here is not there and here is not _UNSET and there is not _UNSET and not self.same(here, there):
                return False
        return True


@cache
def _slots(kind: type[Any]) -> tuple[str, ...]:
    return tuple(name for each in kind.__mro__ for name in each.__dict__.get("__slots__", ()))


def _is_plain(value: Any) -> bool:
    """Whether what equals it is the same."""
    return type(value) in _PLAIN or (type(value) is tuple and all(map(_is_plain, value)))


def _bound(function: Any) -> tuple[Any, ...]:
    cells = function.__closure__ or ()
    held = [each.cell_contents for each in cells if each != _EMPTY]
    return (*held, function.__defaults__, function.__kwdefaults__)


def joined(before: Any, now: Any, places: Places) -> Any:
    """The value of now, with the objects of before wherever they are the same."""
    if before is now:
        return before
    kind = type(before)
    if kind is not type(now):
        return places.own(now)
    if kind in _PLAIN:
        return before if before == now else now
    if kind is Span:
        return before if places.same(before, now) else places.own(now)
    if issubclass(kind, Record):
        here, there, parts = before.__dict__, now.__dict__, {}
        for name in kind.FIELDS:
            one, other = here[name], there[name]
            if one is other or (type(one) in _PLAIN and type(one) is type(other) and one == other):
                continue
            if (part := joined(one, other, places)) is not one:
                parts[name] = part
        return before.replace(**parts) if parts else before
    if kind is tuple or kind is list:
        items = _joined_items(before, now, places)
        return before if len(items) == len(before) and all(map(is_, items, before)) else kind(items)
    if kind is dict:
        made = {
            name: places.thing(before[name], each) if name in before else places.own(each) for name, each in now.items()
        }
        same = [*made] == [*before] and all(map(is_, made.values(), before.values()))
        return before if same else made
    return before if is_same(before, now, places) else places.own(now)


def _joined_items(before: Any, now: Any, places: Places) -> list[Any]:
    """Of as many each with its own; else those that are the same at the beginning and at the end."""
    if len(before) == len(now):
        return [joined(one, other, places) for one, other in zip(before, now, strict=True)]
    least, at, back = min(len(before), len(now)), 0, 0
    begun: list[Any] = []
    while at < least:
        begun.append(joined(before[at], now[at], places))
        at += 1
        if begun[-1] is not before[at - 1]:
            break
    ended: list[Any] = []
    while at + back < least:
        back += 1
        ended.append(joined(before[-back], now[-back], places))
        if ended[-1] is not before[-back]:
            break
    return [*begun, *map(places.own, now[at : len(now) - back]), *reversed(ended)]
