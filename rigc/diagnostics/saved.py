"""Findings -> text that a later run reads again, and back: plain values in JSON, so that what is read can run nothing."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from typing import Any

from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Add, AddTo, Delete, Mend, Replace
from rigc.record import Record
from rigc.source import Said, Source, Span

_RECORDS: tuple[type[Record], ...] = (Diagnostic, Label, Number, Acceptance, Mend, Replace, Delete, AddTo, Add)
_NUMBERS = {kind: number for number, kind in enumerate(_RECORDS)}
_PLAIN = frozenset((type(None), str, int, float))
Place = Callable[[int, int, int], Span]
_MANY, _PLACE, _LEVEL, _KIND = "many", "place", "level", "kind"


def saved(findings: Sequence[Diagnostic], sources: Sequence[Source], said: Sequence[Said] = ()) -> str | None:
    """The findings, whose places are in these sources; None where one is in another. The pages of their kinds are left out. With what is
    `said` in each source places are in that; None, too, where one is in no line of it."""
    writer = _Writer(sources, said)
    try:
        told = writer.plain(tuple(findings))
    except KeyError:
        return None
    kinds = [[kind.name, int(kind.level), kind.rule, kind.source, kind.about] for kind in writer.kinds]
    return json.dumps([kinds, told], separators=(",", ":"))


def restored(text: str, sources: Sequence[Source], said: Sequence[Said] = ()) -> tuple[Diagnostic, ...]:
    """What `saved` was given, with places in these sources, in which the same is `said` if that was told there. Raises ValueError, TypeError or LookupError where the text is none of ours."""

    def place(number: int, start: int, end: int) -> Span:
        at = said[number].outside if said else int
        return Span(sources[number], at(start), at(end))

    return restored_at(text, place)


def restored_at(text: str, place: Place) -> tuple[Diagnostic, ...]:
    """As `restored`, each place as `place` gives it by the number of its source, start and end; what it raises goes through."""
    kinds, told = json.loads(text)
    reader = _Reader(
        place,
        [Kind(name, Level(level), None, rule, source, (), about) for name, level, rule, source, about in kinds],
    )
    findings: tuple[Diagnostic, ...] = reader.value(told)
    return findings


class _Writer:
    def __init__(self, sources: Sequence[Source], said: Sequence[Said]) -> None:
        self.kinds: dict[Kind, int] = {}
        self._said = said
        self._sources = {id(source): number for number, source in enumerate(sources)}

    def plain(self, value: Any) -> Any:
        """Strings, numbers and None as they are; all else as a list that begins with what it is. Raises KeyError for a place elsewhere."""
        kind = type(value)
        if kind in _PLAIN:  # nearly always
            return value
        if kind is tuple:
            return [_MANY, *[each if type(each) in _PLAIN else self.plain(each) for each in value]]
        if kind in _NUMBERS:
            state = value.__dict__
            parts = [state[name] for name in value.FIELDS]
            return [_NUMBERS[kind], *[each if type(each) in _PLAIN else self.plain(each) for each in parts]]
        if isinstance(value, Level):
            return [_LEVEL, int(value)]
        if isinstance(value, str | int | float):
            return value
        if isinstance(value, Span):
            return [_PLACE, *self._place(value)]
        assert isinstance(value, Kind)
        return [_KIND, self.kinds.setdefault(value, len(self.kinds))]

    def _place(self, span: Span) -> tuple[int, int, int]:
        number = self._sources[id(span.source)]
        if not self._said:
            return number, span.start, span.end
        start, end = map(self._said[number].inside, (span.start, span.end))
        if start is None or end is None:
            raise KeyError(span)
        return number, start, end


class _Reader:
    def __init__(self, place: Place, kinds: Sequence[Kind]) -> None:
        self.kinds = kinds
        self.place = place

    def value(self, plain: Any) -> Any:
        """What `_Writer.plain` was given."""
        if not isinstance(plain, list):
            return plain
        what, *parts = plain
        if what == _MANY:
            return tuple(map(self.value, parts))
        if what == _PLACE:
            return self.place(*parts)
        if what == _LEVEL:
            return Level(parts[0])
        if what == _KIND:
            return self.kinds[parts[0]]
        return _RECORDS[what](*map(self.value, parts))
