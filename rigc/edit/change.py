"""Changes of a source's text -> its whole text as it stands in the file: byte order mark and line ends stay as they are."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterable

from rigc.record import Record
from rigc.source import Source


class Change(Record):
    """What stands from `start` to `end` (offsets in the source's text) becomes `text`."""

    start: int
    end: int
    text: str


def changed(source: Source, changes: Iterable[Change]) -> str:
    """The file's text after the changes, which must not overlap; at one place they follow each other in the order given.

    All that no change covers stays as it is in the file's bytes.
    """
    raw = source.data.decode("utf-8")
    mark = "\ufeff" if raw.startswith("\ufeff") else ""
    raw = raw.removeprefix("\ufeff")
    returns = [found.start() - at for at, found in enumerate(re.finditer("\r\n", raw))]
    parts, done = [mark], 0
    for change in sorted(changes, key=lambda each: each.start):
        start, end = (at + bisect_left(returns, at) for at in (change.start, change.end))
        parts += [raw[done:start], change.text.replace("\n", "\r\n") if returns else change.text]
        done = end
    return "".join((*parts, raw[done:]))


def with_text(source: Source, raw: str) -> Source:
    """The source as it will be read once its file holds this text, as `changed` gives it."""
    plain = raw.removeprefix("\ufeff").replace("\r\n", "\n")
    return Source(source.name, plain, raw.encode("utf-8", "surrogatepass"), source.origin)
