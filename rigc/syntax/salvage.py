"""A piece of a file that does not parse -> the statements in it that do, and a finding for each that does not.

After a mistake only what follows it is read on, in a block of the same kind; the rest of the piece is read once more at
the end, so that a long block costs no more than twice its length.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.near import nearest
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import mistakes
from rigc.syntax.broken_line import without_statement
from rigc.syntax.chunks import Chunk
from rigc.syntax.mistake import Mistake
from rigc.syntax.nodes import File, Node
from rigc.syntax.wordings import tell

MOST_MISTAKES_A_BLOCK = 40
_SECOND_WORD = re.compile(r"\s*[a-z][\w-]*[ \t]+([a-z-]+)[ \t]+[\w\"]")


class Stop(Record):
    """Reading stopped at an offset; `mistake` makes its record, given the block that was being read (or an empty text)."""

    at: int
    mistake: Callable[[str], Mistake]


Read = Callable[[str, int], File | Stop]
"""Reads a text that begins at an offset of the source."""


class Salvaged(Record):
    """What a piece holds, what is wrong with it, and what of it was passed over."""

    statements: tuple[Node, ...]
    findings: tuple[Diagnostic, ...]
    skipped: tuple[Span, ...]


def salvage(source: Source, chunk: Chunk, read: Read) -> Salvaged:
    """Reads a piece with all its mistakes."""
    return _Salvage(source, chunk, read).run()


class _Salvage:
    def __init__(self, source: Source, chunk: Chunk, read: Read) -> None:
        self.source = source
        self.chunk = chunk
        self.read = read
        self.findings = list(chunk.findings)
        self.skipped = list(chunk.passed_over)
        opener = chunk.opener
        self.block = opener if opener in mistakes.BLOCK_OPENERS else nearest(opener, mistakes.BLOCK_OPENERS)
        self.text = chunk.text
        self.seen = 0
        self.lead = ""
        self.headless = False

    def run(self) -> Salvaged:
        if self.findings and not self.block:
            return self._lost()
        while len(self.findings) < MOST_MISTAKES_A_BLOCK:
            rest = self.lead + self.text[self.seen :]
            read = self.read(rest, self._base())
            if isinstance(read, File):
                return self._kept(read)
            inside = len(self.lead) or self.chunk.header_end
            self.findings.append(tell(read.mistake(self.block if read.at >= inside > 0 else "")))
            goes_on = self._without_header() if read.at < inside else self._without_statement(rest, read.at, inside)
            if not goes_on:
                return self._lost()
        self.findings.append(mistakes.too_many(self.findings[-1].span or self._whole(), MOST_MISTAKES_A_BLOCK, "block"))
        return self._lost()

    def _base(self) -> int:
        return self.chunk.start + self.seen - len(self.lead)

    def _whole(self) -> Span:
        return Span(self.source, self.chunk.start, self.chunk.start + len(self.chunk.text))

    def _without_header(self) -> bool:
        """Goes on inside a block whose first line can't be read; nothing of it is kept."""
        if self.lead or not self.block:
            return False
        self.skipped.append(self._whole())
        second = _SECOND_WORD.match(self.text)
        if (
            second is not None and second[1] in mistakes.BLOCK_OPENERS
        ):  # `power supply mill {` has a supply's statements
            self.block = second[1]
        self.headless, self.seen, self.lead = True, self.chunk.header_end, mistakes.BLOCK_OPENERS[self.block]
        return True

    def _without_statement(self, rest: str, at: int, inside: int) -> bool:
        mended = without_statement(rest, at, inside)
        if mended is None:
            return False
        base = self._base()
        self.skipped.append(Span(self.source, base + mended.start, base + mended.end))
        self.text = self.text[: self.seen] + mended.text[len(self.lead) :]
        if self.chunk.header_end:
            self.seen += mended.end - len(self.lead)
            self.lead = mistakes.BLOCK_OPENERS[self.block]
        return True

    def _kept(self, read: File | Stop) -> Salvaged:
        if self.seen and not self.headless:
            read = self.read(self.text, self.chunk.start)
        statements = () if self.headless or isinstance(read, Stop) else read.statements
        return Salvaged(statements, tuple(self.findings), tuple(self.skipped))

    def _lost(self) -> Salvaged:
        return Salvaged((), tuple(self.findings), (*self.skipped, self._whole()))
