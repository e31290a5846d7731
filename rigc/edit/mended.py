"""A mend -> the texts of the files that it changes; all else in them keeps its bytes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Any

from rigc.diagnostics.mend import Add, AddTo, Delete, Edit, Mend, Replace
from rigc.edit.canonical import block_items
from rigc.edit.change import Change, changed
from rigc.edit.into_block import into_block
from rigc.edit.spans import span_of
from rigc.loader import STOCK
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import File, Node
from rigc.syntax.nodes.written import opening

Parse = Callable[[Source], File]


class CannotMend(Exception):
    """An edit has no place: its block is nowhere, or it would change the stock that ships with rigc."""


def mended(mend: Mend, sources: Sequence[Source], parse: Parse) -> dict[str, str]:
    """The new texts by the names of their sources, the first of which is the rig's own file. Raises `CannotMend`."""
    return {source.name: changed(source, each) for source, each in changes(mend, sources, parse).items()}


def changes(mend: Mend, sources: Sequence[Source], parse: Parse) -> dict[Source, list[Change]]:
    """What changes in which source, in the order of the text. Raises `CannotMend`."""
    by_source: dict[Source, list[Change]] = {}
    for edit in mend.edits:
        source, change = _change(edit, sources, parse)
        if source.name.startswith(STOCK):
            raise CannotMend(f"'{source.name}' ships with rigc")
        by_source.setdefault(source, []).append(change)
    return {source: _apart(each) for source, each in by_source.items()}


def _apart(changes: Iterable[Change]) -> list[Change]:
    """The changes, each once. Raises `CannotMend` where two overlap."""
    found = sorted(dict.fromkeys(changes), key=lambda each: (each.start, each.end))
    for one, other in pairwise(found):
        if other.start < one.end:
            raise CannotMend("two edits overlap")
    return found


def _change(edit: Edit, sources: Sequence[Source], parse: Parse) -> tuple[Source, Change]:
    if isinstance(edit, Replace):
        return edit.span.source, Change(edit.span.start, edit.span.end, edit.text)
    if isinstance(edit, Delete):
        return edit.span.source, _deleted(edit.span, parse(edit.span.source))
    if isinstance(edit, Add):
        return sources[0], _added(edit, parse(sources[0]))
    return _into(edit, sources, parse)


def _deleted(span: Span, file: File) -> Change:
    """The innermost statement that holds the span, with the lines on which nothing else stands."""
    held = [each for each in map(span_of, _statements(file)) if each.start <= span.start and span.end <= each.end]
    whole = min(held, key=lambda each: each.end - each.start, default=span)
    text = span.source.text
    start, end = text.rfind("\n", 0, whole.start) + 1, text.find("\n", whole.end)
    end = len(text) if end < 0 else end
    behind = text[whole.end : end].strip()
    if text[start : whole.start].strip() or (behind and not behind.startswith("#")):
        return Change(whole.start, whole.end, "")
    return Change(start, min(len(text), end + 1), "")


def _statements(file: File) -> Iterator[Node]:
    for statement in file.statements:
        yield statement
        yield from block_items(statement) or ()


def _added(edit: Add, file: File) -> Change:
    text = file.span.source.text
    if edit.at_start:
        first = [each for each in file.statements if isinstance(each, nodes.Language | nodes.Use)]
        end = text.find("\n", span_of(first[-1]).end) + 1 if first else 0
        if first and end == 0:
            return Change(len(text), len(text), f"\n{edit.line}\n")
        return Change(end, end, f"{edit.line}\n")
    return Change(len(text), len(text), f"{'' if text.endswith(chr(10)) or not text else chr(10)}{edit.line}\n")


def _into(edit: AddTo, sources: Sequence[Source], parse: Parse) -> tuple[Source, Change]:
    for source in sources if edit.name else sources[:1]:
        file = parse(source)
        blocks = [each for each in file.statements if _is_block(each, edit)]
        if blocks or not edit.name:
            return source, into_block(file, blocks, edit.block, [edit.line])
    raise CannotMend(f"no block '{edit.block} {edit.name}' is found")


def _is_block(node: Node, edit: AddTo) -> bool:
    if block_items(node) is None or opening(type(node)) != edit.block:
        return False
    whole: Any = node
    if getattr(whole, "deck", None) is not None and edit.block == "place":
        return False
    return not edit.name or (whole.number if edit.block == "preset" else whole.name).text == edit.name
