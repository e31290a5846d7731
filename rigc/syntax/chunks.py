"""A file that does not parse -> its top-level statements and blocks, found by braces alone, so that each is tried by itself."""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import mistakes

_MARKS = re.compile(r'"(?:\\.|[^"\\\n])*"?|#[^\n]*|[{}\n]')
_FIRST_WORD = re.compile(r"[ \t]*([A-Za-z-]+)")


class Chunk(Record):
    """A top-level statement, or a block. `header_end` is the offset in `text` after its `{` (0 if it is no block)."""

    text: str
    start: int
    opener: str
    header_end: int
    findings: tuple[Diagnostic, ...]


def chunks(source: Source) -> list[Chunk]:
    """The pieces in order. A block inside a block, a brace too many or too few is a finding of its piece."""
    found: list[Chunk] = []
    text = source.text
    start, opened, arrow = 0, -1, False
    findings: list[Diagnostic] = []

    def cut(end: int, closed: str = "") -> None:
        nonlocal start, opened, findings
        piece = text[start:end] + closed
        if piece.strip() or findings:
            word = _FIRST_WORD.match(piece)
            header = opened - start + 1 if opened >= 0 else 0
            found.append(Chunk(piece, start, word[1] if word and header else "", header, tuple(findings)))
        start, opened, findings = end, -1, []

    for mark in _MARKS.finditer(text):
        sign, at = mark.group(), mark.start()
        if sign == "{" and opened < 0:
            opened = at
        elif sign == "{":
            line_start = text.rfind("\n", 0, at) + 1
            word = _FIRST_WORD.match(text, line_start)
            outer = Span(source, opened, opened + 1)
            if word and word[1] in mistakes.BLOCK_OPENERS and line_start > opened:
                findings.append(
                    mistakes.UNCLOSED.at(
                        outer,
                        f"this block is not closed before '{text[line_start:at].strip()}' begins",
                        label="opened here",
                        also=(Label(Span(source, line_start, at + 1), "the next block begins here"),),
                        help="close it with } on a line of its own",
                    )
                )
                cut(line_start, "}\n")
                opened = at
            elif not findings:
                findings.append(
                    mistakes.NESTED.at(
                        Span(source, at, at + 1),
                        "a block opens inside a block",
                        label="no block stands here",
                        also=(Label(outer, "the block around it"),),
                        help="write it outside, or close the block before it",
                    )
                )
        elif sign == "}" and opened >= 0:
            end = text.find("\n", at)
            rest = text[at + 1 : len(text) if end < 0 else end].split("#")[0]
            cut(at + 1 if rest.strip() else (len(text) if end < 0 else end + 1))
        elif sign == "\n" and opened < 0:
            arrow = text[start:at].split("#")[0].rstrip().endswith(("->", "=>"))
            if not arrow:
                cut(at + 1)
    if opened >= 0:
        findings.append(
            mistakes.UNCLOSED.at(
                Span(source, opened, opened + 1),
                "this block is never closed",
                label="opened here",
                help="close it with } on a line of its own",
            )
        )
        cut(len(text), "\n}\n")
    else:
        cut(len(text))
    return found
