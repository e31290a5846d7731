"""A statement -> its canonical lines: one, or for a chain that is long or holds comments several, broken behind arrows."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.edit.piece import Piece
from rigc.edit.remarks import Remark
from rigc.edit.spans import span_of
from rigc.syntax.nodes import Node, Path

WIDTH = 120
"""The longest line that a chain fills, in characters, indent and all."""


def chain_lines(node: Node, depth: int, comments: list[Remark]) -> Iterator[Piece]:
    """The lines of a statement that is no block, `depth` indents deep; continued lines stand one indent deeper."""
    path = next((value for value in map(node.__dict__.get, node.FIELDS) if isinstance(value, Path)), None)
    whole = str(node)
    if path is None:
        yield Piece(whole, span_of(node).start, span_of(node).end, depth, "line")
        return
    breaks = _breaks(path, comments)
    if not breaks and len(whole) + 2 * depth <= WIDTH:
        yield Piece(whole, span_of(node).start, span_of(node).end, depth, "line")
        return
    yield from _broken(node, path, depth, breaks)


def _breaks(path: Path, comments: list[Remark]) -> frozenset[int]:
    """The hops before whose stop a comment stands."""
    return frozenset(
        at
        for at, hop in enumerate(path.hops)
        if any(hop.link.span.end <= each.start < hop.stop.span.start for each in comments)
    )


def _broken(node: Node, path: Path, depth: int, breaks: frozenset[int]) -> Iterator[Piece]:
    stops = [path.first, *(hop.stop for hop in path.hops)]
    links = [f" {hop.link}" for hop in path.hops] + [""]
    head = str(node).removesuffix(str(path))
    words = [f"{stop}{link}" for stop, link in zip(stops, links, strict=True)]
    words[0] = head + words[0]
    lines: list[list[int]] = [[0]]
    room = WIDTH - 2 * depth - len(words[0])
    for at in range(1, len(words)):
        if at - 1 in breaks or room < len(words[at]) + 1:
            lines.append([])
            room = WIDTH - 2 * depth - 1
        lines[-1].append(at)
        room -= len(words[at]) + 1
    for number, line in enumerate(lines):
        kind = "goes on" if number == 0 else "last" if line is lines[-1] else "between"
        start = span_of(node).start if number == 0 else stops[line[0]].span.start
        end = span_of(node).end if line is lines[-1] else path.hops[line[-1]].link.span.end
        text = " ".join(words[at] for at in line)
        yield Piece(text, start, end, depth + (number > 0), "line" if len(lines) == 1 else kind)
