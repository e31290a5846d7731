"""A file -> its blocks and statements as an outline."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from rigc.edit.canonical import block_items
from rigc.edit.spans import span_of
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import File, Node
from rigc.syntax.nodes.written import opening

_JACKS = (
    nodes.Input, nodes.Output, nodes.Outlet, nodes.Inlet, nodes.MidiJack, nodes.Expression, nodes.ControlJack, nodes.Usb,
    nodes.PanelJack, nodes.PanelInlet, nodes.Lead, nodes.Feed,
)  # fmt: skip


class Entry(Record):
    """A line of the outline: its name, what it is (`sort` is the word that opens it), its title, where it is, and what it holds."""

    name: str
    sort: str
    detail: str
    span: Span
    word: Span
    inside: tuple[Entry, ...] = ()


def outline(file: File) -> tuple[Entry, ...]:
    """The top-level statements in order; of a block, its jacks, outlets, leads and feeds. What can't be read is left out."""
    return tuple(_entries(file.statements, file.span.source))


def _entries(statements: Iterable[Node], source: Source) -> Iterator[Entry]:
    for node in statements:
        if isinstance(node, nodes.Language | nodes.Note):
            continue
        whole: Any = node
        items = block_items(node)
        span = span_of(node)
        sort = opening(type(node)) or "statement"
        first = source.text[span.start : span.end].split("\n")[0].rstrip(" {")
        word = _word(whole) or Span(source, span.start, span.start + len(first))
        title = getattr(whole, "title", None)
        name = word.text if items is not None and _word(whole) else first
        inside = () if items is None else tuple(_inside(items, source))
        yield Entry(name, sort, "" if title is None else title.value, span, word, inside)


def _inside(items: tuple[Node, ...], source: Source) -> Iterator[Entry]:
    for node in items:
        fact: Any = getattr(node, "fact", node)
        if isinstance(fact, _JACKS):
            span = span_of(fact)
            line = source.text[span.start : span.end].split("\n")[0].rstrip()
            yield Entry(line, opening(type(fact)) or "lead", "", span, Span(source, span.start, span.start + len(line)))


def _word(whole: Any) -> Span | None:
    for field in ("name", "mark", "number"):
        word = getattr(whole, field, None)
        if word is not None:
            return Span(word.span.source, word.span.start, word.span.end)
    return None
