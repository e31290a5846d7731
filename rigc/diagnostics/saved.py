"""Findings -> text that a later run reads again, and back: plain values in JSON, so that what is read can run nothing."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Add, AddTo, Delete, Mend, Replace
from rigc.record import Record
from rigc.source import Said, Source, Span

_RECORDS: tuple[type[Record], ...] = (Diagnostic, Label, Number, Acceptance, Mend, Replace, Delete, AddTo, Add)
_MANY, _PLACE, _LEVEL, _KIND = "many", "place", "level", "kind"


def saved(findings: Sequence[Diagnostic], sources: Sequence[Source], said: Sequence[Said] = ()) -> str | None:
    """The findings, whose places are in these sources; None where one is in another. The pages of their kinds are left out. With what is
    `said` in each source places are in that; None, too, where one is in no line of it."""
    writer = _Writer(sources, said)
    try:
        told = writer.plain(tuple(findings))
    except KeyError:
        return None
    kinds = [[kind.name, int(kind.level), kind.rule, kind.source] for kind in writer.kinds]
    return json.dumps([kinds, told], separators=(",", ":"))


def restored(text: str, sources: Sequence[Source], said: Sequence[Said] = ()) -> tuple[Diagnostic, ...]:
    """What `saved` was given, with places in these sources, in which the same is `said` if that was told there. Raises ValueError, TypeError or LookupError where the text is none of ours."""
    kinds, told = json.loads(text)
    reader = _Reader(
        sources, said, [Kind(name, Level(level), None, rule, source) for name, level, rule, source in kinds]
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
        if isinstance(value, tuple):
            return [_MANY, *map(self.plain, value)]
        if isinstance(value, Level):
            return [_LEVEL, int(value)]
        if value is None or isinstance(value, str | int | float):
            return value
        if isinstance(value, Span):
            return [_PLACE, *self._place(value)]
        if isinstance(value, Kind):
            return [_KIND, self.kinds.setdefault(value, len(self.kinds))]
        return [_RECORDS.index(type(value)), *(self.plain(getattr(value, name)) for name in value.FIELDS)]

    def _place(self, span: Span) -> tuple[int, int, int]:
        number = self._sources[id(span.source)]
        if not self._said:
            return number, span.start, span.end
        start, end = map(self._said[number].inside, (span.start, span.end))
        if start is None or end is None:
            raise KeyError(span)
        return number, start, end


class _Reader:
    def __init__(self, sources: Sequence[Source], said: Sequence[Said], kinds: Sequence[Kind]) -> None:
        self.kinds = kinds
        self.said = said
        self.sources = sources

    def value(self, plain: Any) -> Any:
        """What `_Writer.plain` was given."""
        if not isinstance(plain, list):
            return plain
        what, *parts = plain
        if what == _MANY:
            return tuple(map(self.value, parts))
        if what == _PLACE:
            source, (start, end) = self.sources[parts[0]], parts[1:]
            at = self.said[parts[0]].outside if self.said else int
            return Span(source, at(start), at(end))
        if what == _LEVEL:
            return Level(parts[0])
        if what == _KIND:
            return self.kinds[parts[0]]
        return _RECORDS[what](*map(self.value, parts))
