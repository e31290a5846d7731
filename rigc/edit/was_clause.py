"""A renamed block -> the change of its `was` clause, which tells the next revision what the thing was called."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.edit.change import Change
from rigc.edit.spans import span_of
from rigc.syntax import nodes

_REST_OF_LINE = re.compile(r"[ \t]*(#[^\n]*)?\n")


def was_clause(block: nodes.Unit | nodes.Supply, new: str) -> Iterator[Change]:
    """At most one change. A clause that would say the block's own new name goes; one that says another name stays, for
    the older name is the one that a revision knows; without a clause, one with the name until now is put first."""
    stated = next((item for item in block.items if isinstance(item, nodes.Was)), None)
    if stated is None:
        yield _added(block)
    elif stated.name.text == new:
        yield _removed(stated)


def _added(block: nodes.Unit | nodes.Supply) -> Change:
    text = block.span.source.text
    header = next(part for part in (block.title, block.like, block.name) if part is not None)
    inside = text.index("{", header.span.end) + 1
    rest = _REST_OF_LINE.match(text, inside)
    if rest is None:
        return Change(inside, inside, f" was {block.name}\n")
    indent = "  "
    if block.items:
        start = span_of(block.items[0]).start
        before = text[text.rfind("\n", 0, start) + 1 : start]
        indent = before if not before.strip() else indent
    return Change(rest.end(), rest.end(), f"{indent}was {block.name}\n")


def _removed(clause: nodes.Was) -> Change:
    text, start, end = clause.span.source.text, clause.span.start, clause.span.end
    line = text.rfind("\n", 0, start) + 1
    before = text[line:start].rstrip()
    rest = _REST_OF_LINE.match(text, end)
    if rest is None or rest[1] or (before and not before.endswith("{")):
        return Change(start, end, "")
    return Change(line + len(before), rest.end(), "")
