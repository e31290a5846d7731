"""Source -> Document as written, and every mistake of the file in one run."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property, partial
from typing import TYPE_CHECKING

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span
from rigc.syntax.automaton import Automaton
from rigc.syntax.lines_tried import Sought
from rigc.syntax.nodes import File
from rigc.syntax.parsed import Lent, Parsed
from rigc.syntax.reparsed import reparsed
from rigc.syntax.slips.beyond_limits import beyond_limits
from rigc.syntax.slips.impossible_dates import impossible_dates
from rigc.syntax.slips.odd_signs import Looked, looked_at, no_text

if TYPE_CHECKING:
    from rigc.syntax.tables import Tables


class Grammar:
    """The grammar, ready to parse with; its tables are loaded (`tables`) when something can't be read, or is asked of them. `sought` is kept of
    lines that could not be read."""

    def __init__(self, automaton: Automaton, tables: Callable[[], Tables]) -> None:
        self.automaton = automaton
        self._load = tables
        self.sought: Sought = {}

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


class HoldsMistake(Exception):
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
    if near is not None and not near.findings and looked.text == source.text:
        try:
            read = partial(read_file, grammar, source)
            return Parsed(reparsed(near.file, source, read, isinstance(near, Lent)), more, looked.passed_over)
        except HoldsMistake:  # what the change did not touch was whole before: the mistake is in the rest
            return _piecewise(grammar, source, looked, more, near)
    try:
        return Parsed(read_file(grammar, source, looked.text, 0), more, looked.passed_over)
    except HoldsMistake:
        return _piecewise(grammar, source, looked, more, near)


def _piecewise(
    grammar: Grammar, source: Source, looked: Looked, more: tuple[Diagnostic, ...], near: Parsed | None
) -> Parsed:
    from rigc.syntax.piecewise import piecewise  # a file without mistakes needs none of it

    return piecewise(grammar, source, looked, more, near)


def read_file(grammar: Grammar, source: Source, text: str, base: int) -> File:
    """A stretch of whole lines that begins at an offset of the source. Raises `HoldsMistake`."""
    statements = grammar.automaton.read(whole_lines(text), source, base)
    if statements is None:
        raise HoldsMistake
    return File(statements=statements, span=Span(source, base, base + len(text)))


def whole_lines(text: str) -> str:
    """The text with its last line ended."""
    return text if text.endswith("\n") else text + "\n"
