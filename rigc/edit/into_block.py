"""Statements for a block -> the change that puts them at the end of the last block of that kind, or into a new one."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.edit.change import Change
from rigc.edit.spans import span_of
from rigc.syntax import nodes
from rigc.syntax.nodes import File, Node

_INDENT = "  "


def into_block(file: File, blocks: Sequence[Node], head: str, lines: Sequence[str]) -> Change:
    """The change that adds the lines to the last of the blocks; without one, a block with this head ends the file."""
    if blocks:
        return _at_end(blocks[-1], lines)
    text = file.span.source.text
    body = "".join(f"{_INDENT}{line}\n" for line in lines)
    gap = "" if not text.strip() else "\n" if text.endswith("\n") else "\n\n"
    return Change(len(text), len(text), f"{gap}{head} {{\n{body}}}\n")


def places_stated(file: File, lines: Sequence[str]) -> Change:
    """The change that adds places on the rig's own deck."""
    plain = [each for each in file.statements if isinstance(each, nodes.PlaceBlock) and each.deck is None]
    return into_block(file, plain, "place", lines)


def _at_end(block: Node, lines: Sequence[str]) -> Change:
    text, brace = span_of(block).source.text, span_of(block).end - 1
    line = text.rfind("\n", 0, brace) + 1
    if text[line:brace].strip():
        return Change(brace, brace, "\n" + "".join(f"{_INDENT}{each}\n" for each in lines))
    indent = _indent(block) or _INDENT
    return Change(line, line, "".join(f"{indent}{each}\n" for each in lines))


def _indent(block: Node) -> str:
    """How deep the block's last statement stands, as typed."""
    items: tuple[Node, ...] = getattr(block, "items", ())
    if not items:
        return ""
    text, start = span_of(block).source.text, span_of(items[-1]).start
    before = text[text.rfind("\n", 0, start) + 1 : start]
    return before if not before.strip() else ""
