"""A file that could be read whole -> its canonical text: the same statements, comments and order, one way of spacing.

Two spaces of indent, single spaces between words, two spaces before a comment at the end of a line, at most one blank
line and none inside the edges of a block or a file. Nothing is aligned. A chain takes one line, or breaks behind its
arrows where that line would be longer than `WIDTH`, and wherever the author put a comment.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.edit.chain_lines import WIDTH, chain_lines
from rigc.edit.piece import Piece
from rigc.edit.remarks import Remark, remarks
from rigc.edit.spans import span_of
from rigc.syntax.nodes import File, Node

__all__ = ["WIDTH", "canonical"]

_INDENT = "  "


def canonical(file: File) -> str:
    """The canonical text of a file, as read without a finding."""
    text = file.span.source.text
    comments = list(remarks(text))
    pieces = [*_pieces(file.statements, 0, comments), *_own_lines(comments)]
    pieces.sort(key=lambda piece: piece.start)
    return _laid_out(_indented(pieces), [each for each in comments if not each.own_line], text)


def _pieces(nodes: tuple[Node, ...], depth: int, comments: list[Remark]) -> Iterator[Piece]:
    for node in nodes:
        items = block_items(node)
        if items is None:
            yield from chain_lines(node, depth, comments)
            continue
        yield Piece(str(node).split("\n", 1)[0], span_of(node).start, span_of(node).start, depth, "open")
        yield from _pieces(items, depth + 1, comments)
        yield Piece("}", span_of(node).end - 1, span_of(node).end, depth, "close")


def block_items(node: Node) -> tuple[Node, ...] | None:
    """The statements of a block; None if it is none."""
    items: Any = getattr(node, "items", None)
    return items if isinstance(items, tuple) else None


def _own_lines(comments: list[Remark]) -> Iterator[Piece]:
    return (Piece(each.text, each.start, each.end, 0, "comment") for each in comments if each.own_line)


def _indented(pieces: list[Piece]) -> Iterator[Piece]:
    """Comments of their own line stand as deep as what surrounds them."""
    depth = 0
    for piece in pieces:
        if piece.kind == "comment":
            yield piece.replace(depth=depth)
            continue
        depth = piece.depth + (1 if piece.kind in ("open", "goes on") else 0)
        if piece.kind == "last":
            depth = piece.depth - 1
        yield piece


def _laid_out(pieces: Iterator[Piece], behind: list[Remark], text: str) -> str:
    lines: list[str] = []
    before: Piece | None = None
    end = 0
    for piece in pieces:
        end = _with_remarks(lines, behind, piece.start, end)
        if before is not None and _blank_between(before, piece, text[end : piece.start]):
            lines.append("")
        lines.append(f"{_INDENT * piece.depth}{piece.text}")
        before, end = piece, piece.end
    _with_remarks(lines, behind, len(text), end)
    return "".join(f"{line}\n" for line in lines)


def _with_remarks(lines: list[str], behind: list[Remark], until: int, end: int) -> int:
    """Put the comments that begin before an offset behind the last line; where the last of them, or that line, ends."""
    while behind and behind[0].start < until:
        remark = behind.pop(0)
        lines[-1] += f"  {remark.text}"
        end = remark.end
    return end


def _blank_between(before: Piece, piece: Piece, gap: str) -> bool:
    inner = before.kind in ("open", "goes on") or piece.kind in ("close", "last", "between")
    return not inner and gap.count("\n") > 1
