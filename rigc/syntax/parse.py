"""Source -> Document as written, and every mistake of the file in one run."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property, partial
from typing import TYPE_CHECKING

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span
from rigc.syntax import mistakes
from rigc.syntax.automaton import Automaton
from rigc.syntax.chunks import chunks
from rigc.syntax.each_slip_once import each_slip_once
from rigc.syntax.headless import Piece, without_heads
from rigc.syntax.mistake import Mistake
from rigc.syntax.nodes import File, Node
from rigc.syntax.parsed import Lent, Parsed
from rigc.syntax.reparsed import Unchanged, reparsed
from rigc.syntax.salvage import Stop, salvage
from rigc.syntax.slips.beyond_limits import BEYOND_LIMIT, beyond_limits
from rigc.syntax.slips.impossible_dates import impossible_dates
from rigc.syntax.slips.odd_signs import Looked, looked_at, no_text

if TYPE_CHECKING:
    from rigc.syntax.tables import Tables

MOST_MISTAKES_A_FILE = 200


class Grammar:
    """The grammar, ready to parse with; its tables are loaded (`tables`) when something can't be read, or is asked of them."""

    def __init__(self, automaton: Automaton, tables: Callable[[], Tables]) -> None:
        self.automaton = automaton
        self._load = tables

    @cached_property
    def tables(self) -> Tables:
        """Where reading stops, and what may stand where."""
        return self._load()

    @property
    def heads(self) -> dict[str, frozenset[str]]:
        """For each block the words that begin its statements, for the top level under an empty text."""
        return self.tables.heads

    def follows(self, block: str, text: str) -> frozenset[str]:
        """What may stand behind the beginning of a statement in a block (at the top level under an empty text): words and signs as they are
        written, and `NAME`, `MARK`, `NUMBER`, `UNIT`, `STRING`, `DATE`. Nothing where that beginning is none."""
        return self.tables.follows(block, text)


class _HoldsMistake(Exception):
    """A stretch can't be read."""


def parse(source: Source, grammar: Grammar, near: Parsed | None = None) -> Parsed:
    """Reads a whole file; after a mistake it goes on with the next line, so that all mistakes are found in one run. What `near` holds, which
    was read from a text much like this one, is not read again."""
    looked = looked_at(source)
    if looked is None:
        return Parsed(
            File(statements=(), span=Span(source, 0, 0)), (no_text(source),), (Span(source, 0, len(source.text)),)
        )
    more = (*looked.findings, *impossible_dates(source), *beyond_limits(source))
    if near is not None and not near.findings and not more and looked.text == source.text:
        try:
            read = partial(_file, grammar, source)
            return Parsed(reparsed(near.file, source, read, isinstance(near, Lent)), (), ())
        except _HoldsMistake:  # what the change did not touch was whole before: the mistake is in the rest
            return _piece_by_piece(grammar, source, looked, more, near)
    try:
        return Parsed(_file(grammar, source, looked.text, 0), more, looked.passed_over)
    except _HoldsMistake:
        return _piece_by_piece(grammar, source, looked, more, near)


def _file(grammar: Grammar, source: Source, text: str, base: int) -> File:
    statements = grammar.automaton.read(_whole(text), source, base)
    if statements is None:
        raise _HoldsMistake
    return File(statements=statements, span=Span(source, base, base + len(text)))


def _whole(text: str) -> str:
    return text if text.endswith("\n") else text + "\n"


def _piece_by_piece(
    grammar: Grammar, source: Source, looked: Looked, more: tuple[Diagnostic, ...], near: Parsed | None
) -> Parsed:
    unchanged = Unchanged(near.file, source) if near is not None and not near.findings else None

    def read(text: str, base: int) -> File | Stop:
        known = None if unchanged is None else unchanged.alone_in(text, base)
        if known is not None:
            return File(statements=(known,), span=Span(source, base, base + len(text)))
        try:
            return _file(grammar, source, text, base)
        except _HoldsMistake:
            return _stop(grammar, source, base, text)

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
        if count >= MOST_MISTAKES_A_FILE:
            skipped.append(Span(source, chunk.start, len(source.text)))
            break
    findings = without_heads(source, pieces, grammar.heads)
    if count >= MOST_MISTAKES_A_FILE:
        findings.append(mistakes.too_many(findings[-1].span or skipped[-1], count, "file"))
    told = (each for each in more if each.kind is not BEYOND_LIMIT or not _lies_in(each.span, skipped))
    return Parsed(
        File(statements=tuple(statements), span=Span(source, 0, len(source.text))),
        each_slip_once((*findings, *told)),
        tuple(skipped),
    )


def _lies_in(span: Span | None, skipped: list[Span]) -> bool:
    return span is not None and any(each.start <= span.start < each.end for each in skipped)


def _stop(grammar: Grammar, source: Source, base: int, text: str) -> Stop:
    tables = grammar.tables
    found = tables.stopped(text, _whole(text))
    at, kind, expected = found.at, found.kind, found.expected
    span = Span(source, base + at, base + at + found.length)
    return Stop(at, lambda block: Mistake(span, kind, expected, tables.literals, lambda: tables.heads, block, text, at))
