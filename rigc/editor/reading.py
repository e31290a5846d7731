"""The reader of an editor: what was parsed is kept in memory by file, so that after an edit only the statements that changed are parsed."""

from __future__ import annotations

from rigc.source import Source
from rigc.syntax.parsed import Parsed, Reader


class KeptReader:
    """Parses with another reader, each text once. Nothing is written while one types."""

    def __init__(self, reader: Reader) -> None:
        self._reader = reader
        self._last: dict[tuple[str, str], Parsed] = {}
        self._whole: dict[tuple[str, str], Parsed] = {}

    @property
    def reserved(self) -> frozenset[str]:
        """The words of the language that can't name a declared thing."""
        return self._reader.reserved

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        """The file as written. What is `near` a file is only tried, and not kept."""
        if near is not None:
            return self._reader.parse(source, near)
        key = (source.name, source.origin)
        kept = self._last.get(key)
        if kept is not None and kept.file.span.source is source:
            return kept
        parsed = self._reader.parse(source, self._whole.get(key))
        self._last[key] = parsed
        if not parsed.findings:
            self._whole[key] = parsed
        return parsed
