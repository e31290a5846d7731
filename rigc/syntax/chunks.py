"""A file that does not parse -> its top-level statements and blocks, found by braces alone, so that each is tried by itself."""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import mistakes

_MARKS = re.compile(r'"(?:\\.|[^"\\\n])*"?|#[^\n]*|[{}\n]')
_FIRST_WORD = re.compile(r"[ \t\n]*([A-Za-z-]+)")
_ENDS = re.compile(r"[ \t]*(#[^\n]*)?(\n|\Z)")
_BRACE_FOLLOWS = re.compile(r"\s*\{")
_STATEMENT_FOLLOWS = re.compile(rf"\s*({'|'.join(mistakes.BLOCK_OPENERS)}|chain|use|loop|accept)[ \t]+(?![-=]>)")
_STATEMENT_LINE = re.compile(r"\n([ \t]*(?:chain|use|accept)[ \t]+(?![-=]>))")
_WINDOW = 300
"""How far back the beginning of a line is looked for: enough for any sane line, and no more on an insane one."""


class Chunk(Record):
    """A top-level statement, or a block. `header_end` is the offset in `text` after its `{` (0 if it is no block).

    Blocks inside a block are blank in `text`; `passed_over` says where they were.
    """

    text: str
    start: int
    opener: str
    header_end: int
    findings: tuple[Diagnostic, ...]
    passed_over: tuple[Span, ...]


def chunks(source: Source, text: str) -> list[Chunk]:
    """The pieces in order, of the source's text or of one as long as it. A block inside a block, a brace too many or too few is a finding of its piece."""
    return _Cutter(source, text).pieces()


class _Cutter:
    def __init__(self, source: Source, text: str) -> None:
        self.source = source
        self.text = text
        self.found: list[Chunk] = []
        self.start = 0
        self.opened = -1
        self.inner = -1
        self.depth = 0
        self.findings: list[Diagnostic] = []
        self.passed_over: list[Span] = []

    def pieces(self) -> list[Chunk]:
        for mark in _MARKS.finditer(self.text):
            sign, at = mark.group(), mark.start()
            if sign == "{":
                self._open(at)
            elif sign == "}":
                self._close(at)
            elif sign == "\n" and self.opened < 0:
                self._line_end(at)
            elif self.opened < 0 and sign[0] == '"' and not re.fullmatch(r'"(?:\\.|[^"\\])*"', sign):
                self._unclosed_text(sign, at)
        self._end()
        return self.found

    def _open(self, at: int) -> None:
        if self.opened < 0:
            self.opened = at
        elif self.depth:
            self.depth += 1
        else:
            self._inner_block(at)

    def _inner_block(self, at: int) -> None:
        line = self.text.rfind("\n", max(self.opened, at - _WINDOW), at) + 1
        line = line or max(self.opened + 1, at - _WINDOW)
        word = _FIRST_WORD.match(self.text, line)
        if word and word[1] in mistakes.BLOCK_OPENERS and self._indent(line) <= self._indent(self.start):
            if not self._closed_before_statement(line):
                self.findings.append(_not_closed(self.source, self.opened, line, at))
                self._cut(line, "}\n")
            self.opened = at
            return
        self.depth, self.inner = 1, line
        if not self.findings:
            self.findings.append(_nested(self.source, self.opened, at, word[1] if word else ""))

    def _closed_before_statement(self, end: int) -> bool:
        """Whether a block that nothing closes before `end` has a top-level statement in it, no farther in than itself; it is cut there."""
        lines = (found.start(1) for found in _STATEMENT_LINE.finditer(self.text, self.opened, end))
        at = next((line for line in lines if self._indent(line) <= self._indent(self.start)), None)
        if at is None or self._indent(self.opened + 1) <= self._indent(self.start):
            return False
        ends = self.text.find("\n", at)
        self.findings.append(
            _not_closed(self.source, self.opened, at, ends if ends >= 0 else len(self.text), "statement")
        )
        self._cut(at, "}\n")
        for mark in re.compile("\n").finditer(self.text, at, end):
            self._line_end(mark.start())
        return True

    def _indent(self, line: int) -> int:
        found = re.compile(r"(?:[ \t]*\n)*([ \t]*)").match(self.text, line)
        return len(found[1]) if found else 0

    def _close(self, at: int) -> None:
        if self.depth:
            self.depth -= 1
            if not self.depth:
                self.passed_over.append(Span(self.source, self.inner, at + 1))
        elif self.opened >= 0:
            ends = _ENDS.match(self.text, at + 1)
            self._cut(ends.end() if ends else at + 1)

    def _line_end(self, at: int) -> None:
        begin = max(self.start, self.text.rfind("\n", self.start, at) + 1)
        line = self.text[begin:at].split("#")[0].rstrip()
        goes_on = line.endswith(("->", "=>")) and not _STATEMENT_FOLLOWS.match(self.text, at)
        if not goes_on and not (line.strip() and _BRACE_FOLLOWS.match(self.text, at)):
            self._cut(at + 1)

    def _unclosed_text(self, sign: str, at: int) -> None:
        """A text without its closing quote has swallowed the brace behind it."""
        if sign.rstrip().endswith("{"):
            self.opened = at + len(sign.rstrip()) - 1

    def _end(self) -> None:
        if self.opened < 0:
            self._cut(len(self.text))
            return
        if self.depth:
            self.passed_over.append(Span(self.source, self.inner, len(self.text)))
        elif self._closed_before_statement(len(self.text)):
            self._cut(len(self.text))
            return
        else:
            self.findings.append(_never_closed(self.source, self.opened))
        self._cut(len(self.text), "\n}\n")

    def _cut(self, end: int, closed: str = "") -> None:
        parts, at = [], self.start
        for span in self.passed_over:
            parts += [self.text[at : span.start], " " * (span.end - span.start)]
            at = span.end
        piece = "".join((*parts, self.text[at:end], closed))
        if piece.strip() or self.findings:
            word = _FIRST_WORD.match(piece)
            header = self.opened - self.start + 1 if self.opened >= 0 else 0
            opener = word[1] if word and header else ""
            self.found.append(Chunk(piece, self.start, opener, header, tuple(self.findings), tuple(self.passed_over)))
        self.start, self.opened, self.depth, self.findings, self.passed_over = end, -1, 0, [], []


def _not_closed(source: Source, opened: int, line: int, at: int, what: str = "block") -> Diagnostic:
    return mistakes.UNCLOSED.at(
        Span(source, opened, opened + 1),
        f"this block is not closed before '{source.text[line:at].strip()}' begins",
        label="opened here",
        also=(Label(Span(source, line, min(at + 1, len(source.text))), f"the next {what} begins here"),),
        mends=(
            Mend(
                f"put }} on a line of its own before '{source.text[line:at].strip()}'",
                (Replace(Span(source, line, line), "}\n\n"),),
            ),
        ),
    )


def _nested(source: Source, opened: int, at: int, word: str) -> Diagnostic:
    return mistakes.NESTED.at(
        Span(source, at, at + 1),
        f"'{word}' opens a block inside a block" if word else "a block opens inside a block",
        label="no block stands here",
        also=(Label(Span(source, opened, opened + 1), "the block around it"),),
        help="write it outside, or close the block before it",
    )


def _never_closed(source: Source, opened: int) -> Diagnostic:
    return mistakes.UNCLOSED.at(
        Span(source, opened, opened + 1),
        "this block is never closed",
        label="opened here",
        mends=(
            Mend(
                "put } on a line of its own at the end",
                (Replace(Span(source, len(source.text), len(source.text)), "\n}\n"),),
            ),
        ),
    )
