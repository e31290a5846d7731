"""A source -> its words by what they mean, for an editor to colour: from the names that were found, the rest by their signs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.editor.draft import Draft
from rigc.editor.names import Named
from rigc.record import Record
from rigc.source import Source, Span

SORTS = (
    "comment",
    "string",
    "number",
    "operator",
    "keyword",
    "type",
    "class",
    "struct",
    "namespace",
    "property",
    "enumMember",
)
"""The sorts that are told, by the names that the protocol gives them: a unit of measure is a `type`, a thing a `class`, stock a `struct`, a deck,
case or scenario a `namespace`, a jack or outlet a `property`, a lead's number an `enumMember`."""

_SIGNS = re.compile(
    r'(?P<comment>#[^\n]*)|(?P<string>"(?:\\.|[^"\\\n])*"?)|(?P<number>\d{4}-\d\d-\d\d|[+-]?\d+(?:\.\d+)?)'
    r"|(?P<operator>[-=]>|\.\.|±|\+-)|(?P<word>[A-Za-zµμΩ°%][\w%/-]*)"
)
_FAMILIES = {
    "thing": "class", "cable": "struct", "plug": "struct", "strip": "struct", "deck": "namespace", "case": "namespace",
    "scenario": "namespace", "jack": "property", "lead": "enumMember",
}  # fmt: skip


class Colour(Record):
    """A stretch of the text on one line, its sort, and whether it declares what it names."""

    start: int
    end: int
    sort: str
    declares: bool = False


def colours(draft: Draft, source: Source) -> tuple[Colour, ...]:
    """All of a source's words in order. What a name means is known even where its line can't be read, if it is declared elsewhere."""
    named = {each.span.start: each for each in draft.names.by_source.get(source, ())}
    declared = {name: family for family, name in draft.names.by_key if family in _FAMILIES and "." not in name}
    skipped = [span for span in draft.read.gathered.skipped if span.source is source]
    return tuple(_coloured(source.text, named, declared, skipped))


def _coloured(text: str, named: dict[int, Named], declared: dict[str, str], skipped: list[Span]) -> Iterator[Colour]:
    behind_number = -1
    for found in _SIGNS.finditer(text):
        start, end, sort = found.start(), found.end(), str(found.lastgroup)
        if sort != "word":
            yield Colour(start, end, sort)
            if sort == "number":
                behind_number = end
            continue
        name = named.get(start)
        word = found.group()
        if name is not None:
            yield Colour(start, end, _FAMILIES[name.family], name.declares)
        elif behind_number >= 0 and not text[behind_number:start].strip(" \t") and word not in _BEHIND_NUMBERS:
            yield Colour(start, end, "type")
        elif text[start - 1 : start] == ".":
            yield Colour(start, end, "property")
        elif word in declared and any(span.start <= start < span.end for span in skipped):
            yield Colour(start, end, _FAMILIES[declared[word]])
        else:
            yield Colour(start, end, "keyword")
        behind_number = -1


_BEHIND_NUMBERS = frozenset(
    [
        "x",
        "at",
        "to",
        "or",
        "of",
        "on",
        "in",
        "up",
        "by",
        "before",
        "within",
        "dc",
        "ac",
        "of",
        "isolated",
        "common",
        "reads",
        "expects",
        "shared",
        "series",
        "parallel",
        "cycles",
        "characters",
        "oclock",
    ]
)
