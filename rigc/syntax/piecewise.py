"""A file that holds mistakes -> what can be read of it, piece by piece, and every mistake; loaded where there is one."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span
from rigc.syntax import mistakes
from rigc.syntax.chunks import chunks
from rigc.syntax.each_slip_once import each_slip_once
from rigc.syntax.headless import Piece, without_heads
from rigc.syntax.lines_tried import LinesTried
from rigc.syntax.mistake import Mistake
from rigc.syntax.nodes import File, Node
from rigc.syntax.parse import Grammar, HoldsMistake, read_file, whole_lines
from rigc.syntax.parsed import Parsed
from rigc.syntax.reparsed import Unchanged
from rigc.syntax.salvage import Stop, salvage
from rigc.syntax.slips.beyond_limits import BEYOND_LIMIT
from rigc.syntax.slips.odd_signs import Looked

MOST_MISTAKES = 200
"""So many of a file are told."""


def piecewise(
    grammar: Grammar, source: Source, looked: Looked, more: tuple[Diagnostic, ...], near: Parsed | None
) -> Parsed:
    """Each statement or block by itself, with `more` that was found of the text; what `near` holds, which was read from a text much like
    this one, is not read again."""
    unchanged = Unchanged(near, source) if near is not None else None

    def reads(block: str, line: str) -> bool:
        opener, closing = (mistakes.BLOCK_OPENERS.get(block, ""), "}\n") if block else ("", "")
        return grammar.automaton.reads(opener, f"\n{line}\n{closing}")

    tries = LinesTried(reads, grammar.sought)

    def read(text: str, base: int) -> File | Stop:
        known = None if unchanged is None else unchanged.alone_in(text, base)
        if known is not None:
            return File(statements=(known,), span=Span(source, base, base + len(text)))
        try:
            return read_file(grammar, source, text, base)
        except HoldsMistake:
            return _stop(grammar, source, base, text, tries)

    statements: list[Node] = []
    pieces: list[Piece] = []
    skipped: list[Span] = list(looked.passed_over)
    count = 0
    for chunk in chunks(source, looked.text):
        salvaged = salvage(source, chunk, read)
        statements += salvaged.statements
        pieces.append((chunk, salvaged.findings))
        skipped += salvaged.skipped
        count += len(salvaged.findings)
        if count >= MOST_MISTAKES:
            skipped.append(Span(source, chunk.start, len(source.text)))
            break
    findings = without_heads(source, pieces, grammar.heads)
    if count >= MOST_MISTAKES:
        findings.append(mistakes.too_many(findings[-1].span or skipped[-1], count, "file"))
    told = (each for each in more if each.kind is not BEYOND_LIMIT or not _lies_in(each.span, skipped))
    return Parsed(
        File(statements=tuple(statements), span=Span(source, 0, len(source.text))),
        each_slip_once((*findings, *told)),
        tuple(skipped),
    )


def _lies_in(span: Span | None, skipped: list[Span]) -> bool:
    return span is not None and any(each.start <= span.start < each.end for each in skipped)


def _stop(grammar: Grammar, source: Source, base: int, text: str, tries: LinesTried) -> Stop:
    tables = grammar.tables
    found = tables.stopped(text, whole_lines(text))
    at, kind, expected = found.at, found.kind, found.expected
    span = Span(source, base + at, base + at + found.length)
    return Stop(
        at, lambda block: Mistake(span, kind, expected, tables.literals, lambda: tables.heads, block, text, at, tries)
    )
