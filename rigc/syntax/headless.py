"""Lines of a block whose first line is missing -> one finding for all of them, at the first, in place of one for each."""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.source import Source, Span
from rigc.syntax import mistakes
from rigc.syntax.chunks import Chunk

Piece = tuple[Chunk, tuple[Diagnostic, ...]]
"""A piece of a file, and what was found in it."""

_FIRST_WORD = re.compile(r"\s*([A-Za-z][\w-]*)")
_BRACE = re.compile(r"\s*[})\]]\s*(#.*)?\Z")


def without_heads(source: Source, pieces: list[Piece], heads: dict[str, frozenset[str]]) -> list[Diagnostic]:
    """All findings in order, those of the lines and the closing brace of a block that never began as one.

    `heads` are for each block the words that begin its statements.
    """
    findings: list[Diagnostic] = []
    at = 0
    while at < len(pieces):
        brace, home = _end_without_beginning(pieces, at, heads)
        if brace > at:
            findings.append(_told(source, [chunk for chunk, _ in pieces[at : brace + 1]], home))
            at = brace
        else:
            findings += pieces[at][1]
        at += 1
    return findings


def _end_without_beginning(pieces: list[Piece], first: int, heads: dict[str, frozenset[str]]) -> tuple[int, str]:
    """Where the closing brace of the lines from `first` on is (`first`: they have none), and whose block they would fit.

    A line that can stand by itself belongs to them only where it can stand in such a block as well.
    """
    homes = [block for block in heads if block]
    if not pieces[first][1]:
        return first, ""
    for at, (chunk, found) in enumerate(pieces[first:], first):
        if _BRACE.match(chunk.text):
            return at, homes[0] if homes else ""
        word = _word(chunk)
        homes = [block for block in homes if not word or word in heads[block]]
        if chunk.header_end or (word and not found and not homes):
            break
    return first, ""


def _word(chunk: Chunk) -> str:
    """The word that a piece begins with; empty where it holds none, as a remark."""
    found = _FIRST_WORD.match(chunk.text)
    return found[1] if found else ""


def _told(source: Source, chunks: list[Chunk], home: str) -> Diagnostic:
    first, last = chunks[0], chunks[-1]
    if _word(first) in mistakes.BLOCK_OPENERS:
        return _without_brace(source, first, last)
    begin = first.start + len(first.text) - len(first.text.lstrip())
    brace = last.start + len(last.text) - len(last.text.lstrip())
    lines = sum(1 for chunk in chunks[:-1] if _word(chunk))
    stand = (
        "this line and its closing brace stand" if lines == 1 else f"these {lines} lines and their closing brace stand"
    )
    opening = f", for example {mistakes.BLOCK_OPENERS[home].strip()}" if home else ""
    return mistakes.UNCLOSED.at(
        Span(source, begin, begin + len(first.text.strip().partition("\n")[0])),
        f"{stand} in no block",
        label="the first line of their block is missing",
        also=(Label(Span(source, brace, brace + 1), "this brace closes nothing"),),
        help=f"write the first line of the block before it{opening}",
    )


def _without_brace(source: Source, head: Chunk, last: Chunk) -> Diagnostic:
    """The first line of a block is there, but for its brace, or with another bracket."""
    begin = head.start + len(head.text) - len(head.text.lstrip())
    line = head.text.strip().partition("\n")[0].partition("#")[0].rstrip()
    end = begin + len(line)
    if line[-1] in "([":
        closing = last.start + len(last.text) - len(last.text.lstrip())
        edits = (Replace(Span(source, end - 1, end), "{"), Replace(Span(source, closing, closing + 1), "}"))
        return mistakes.UNCLOSED.at(
            Span(source, end - 1, end),
            f"a block stands in braces, not in {line[-1]} {source.text[closing]}",
            label="opened here",
            also=(Label(Span(source, closing, closing + 1), "closed here"),),
            mends=(Mend("write { and }", edits),),
        )
    return mistakes.UNCLOSED.at(
        Span(source, begin, end),
        f"the block '{line}' has no opening brace",
        label="{ is missing at the end of this line",
        mends=(Mend("put { at the end of this line", (Replace(Span(source, end, end), " {"),)),),
    )
