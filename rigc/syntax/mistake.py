"""Mistake: where reading stopped, and all that its wording may ask for."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.mend import Mend, Replace
from rigc.record import Record
from rigc.source import Span
from rigc.syntax.lines_tried import LinesTried


class Wording(Record):
    """How a mistake is told: `help` where no edit can do it, `mends` where one or another can."""

    message: str
    label: str
    help: str = ""
    mends: tuple[Mend, ...] = ()


_WORD = re.compile(r"->|=>|\.\.|[^\s{},.\"#=>]+")
_BROKEN_OFF = re.compile(r"[^\s{},.\"#=>]*\Z")
_FURTHEST = (
    1_000  # signs to either side: longer than a line that a person writes, and short for a wording that looks along it
)


class Mistake(Record):
    """Where reading stopped: the span of what was found, its kind, what could have stood there, and the text around.

    `literals` are the grammar's words and signs by terminal, in its order; `blocks()` gives for each block the words
    that begin its statements, for the top level under an empty text. `block` is the block that was being read, or empty.
    `text` is the piece that was being read and `at` the offset in it. `tries` tells whether other lines would read.
    """

    span: Span
    kind: str
    expected: frozenset[str]
    literals: dict[str, str]
    blocks: Callable[[], dict[str, frozenset[str]]]
    block: str
    text: str
    at: int
    tries: LinesTried

    def reads(self, line: str) -> bool:
        """Whether this line would read where the mistake is."""
        return bool(self.tries.reads(self.block, line))

    @property
    def sign(self) -> str:
        """The sign at the place; empty at the end."""
        return self.text[self.at : self.at + 1]

    @property
    def ends(self) -> bool:
        """Whether the statement breaks off here: nothing follows on the line but a comment."""
        return self.sign in ("", "\n", "#")

    @property
    def word(self) -> str:
        """The word from the place on."""
        found = _WORD.match(self.text, self.at)
        return found.group() if found else self.sign

    @property
    def whole(self) -> str:
        """The word around the place: reading may have stopped inside it."""
        found = _BROKEN_OFF.search(self.before)
        return (found.group() if found else "") + self.word

    @property
    def line_start(self) -> int:
        """The offset of the line's first sign; of a very long line, where the part of it begins that wordings look at."""
        return max(self.text.rfind("\n", 0, self.at) + 1, self.at - _FURTHEST)

    @property
    def line_end(self) -> int:
        """The offset behind the line's last sign; of a very long line, behind the part of it that wordings look at."""
        end = self.text.find("\n", self.at)
        return min(len(self.text) if end < 0 else end, self.at + _FURTHEST)

    @property
    def before(self) -> str:
        """The line up to the place."""
        return self.text[self.line_start : self.at]

    @property
    def after(self) -> str:
        """The line from the place on."""
        return self.text[self.at : self.line_end]

    @property
    def line(self) -> str:
        """The whole line, or as much of a very long one as wordings look at."""
        return self.text[self.line_start : self.line_end]

    @property
    def code(self) -> str:
        """The line without its comment."""
        return self.line.partition("#")[0]

    def awaits(self, *words: str) -> bool:
        """Whether each of these words or signs could have stood here."""
        told = {self.literals.get(name, name) for name in self.expected}
        return told.issuperset(words)

    def place(self, start: int, end: int) -> Span:
        """The stretch of the source that stands at these offsets of the text."""
        moved = self.span.start - self.at
        return Span(self.span.source, start + moved, end + moved)

    def instead(self, start: int, end: int, text: str, words: str) -> tuple[Mend, ...]:
        """The one mend by which `text` stands in place of what is between these offsets."""
        return (Mend(words, (Replace(self.place(start, end), text),)),)

    def half_quoted(self) -> Wording | None:
        """What to say where a text ends in a quote while all quotes behind it are pairs: it is this text that lacks one."""
        half = re.match(r'([^\s"#{][^"#{\n]*)"(?=[^"\n]*(?:"[^"\n]*"[^"\n]*)*$)', self.after)
        if half is None:
            return None
        mends = self.instead(self.at, self.at + half.end(), f'"{half[1]}"', f'write "{half[1]}"')
        return Wording(f"'{half[1]}' has a quote behind it and none before it", "a quote goes here", mends=mends)

    def rewritten(self, pattern: str, new: str) -> tuple[Mend, ...]:
        """The one mend by which all that matches in the line is written anew; none where nothing matches."""
        made = re.sub(pattern, new, self.code)
        if made == self.code:
            return ()
        return self.instead(self.line_start, self.line_start + len(self.code), made, f"write {made.strip()}")

    def write(self, text: str, words: str = "") -> tuple[Mend, ...]:
        """The one mend by which `text` stands in place of the whole word."""
        end = self.at + len(self.word)
        return self.instead(end - len(self.whole), end, text, words or f"write '{text}'")
