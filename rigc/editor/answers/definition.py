"""A word -> where what it names is declared, and everywhere it is named, in all files of the rig."""

from __future__ import annotations

import re
from typing import Any

from rigc.editor.draft import Draft
from rigc.editor.names import JACK, Named
from rigc.loader import used_name
from rigc.source import Source, Span


def definition(draft: Draft, source: Source, offset: int) -> tuple[Span, ...]:
    """The words by which it is declared; of a jack in a run (`o1..o8`) or of one that comes by `like`, the statement. For the path behind
    `use` the beginning of that file."""
    used = _used(draft, source, offset)
    if used is not None:
        return (Span(used, 0, 0),)
    word = draft.names.at(source, offset)
    if word is None:
        return ()
    return tuple(each.span for each in draft.names.declared(word.key)) or _statement(draft, word)


def references(draft: Draft, source: Source, offset: int, declaration: bool = True) -> tuple[Span, ...]:
    """Every place at which it is named, with that of its declaration if wanted; those in the stock that ships with rigc too."""
    word = draft.names.at(source, offset)
    if word is None:
        return ()
    found = [each.span for each in draft.names.all(word.key) if declaration or not each.declares]
    return tuple(sorted(found, key=lambda span: (span.source.name, span.start)))


def _statement(draft: Draft, word: Named) -> tuple[Span, ...]:
    if word.family != JACK or draft.rig is None:
        return ()
    thing_name, _, jack_name = word.name.partition(".")
    thing: Any = draft.rig.things.get(thing_name)
    held = () if thing is None else (*thing.jacks, *getattr(thing, "outlets", ()))
    return tuple(each.span for each in held if each.name == jack_name)


def _used(draft: Draft, source: Source, offset: int) -> Source | None:
    line = source.line(source.position(offset)[0])
    found = re.match(r'use[ \t]+"([^"]*)"', line)
    return None if found is None else draft.source(used_name(source.name, found[1]))
