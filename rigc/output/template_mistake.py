"""A fault in a template -> its file, its line, what is wrong and what to do: neither a fault of the rig nor a bug of rigc.

It lives apart from `templates` so that a caller can catch it without loading the template engine.
"""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.source import Source, Span

BROKEN = Kind(
    "broken-template",
    Level.ERROR,
    """A template of your own cannot be read, or cannot be filled in.

    Why it matters: a page that is filled in halfway looks whole to the crew, so nothing is written at all.
    What to do: correct the line that is named. What a template is given stands in templates/README.md, which
    `rigc templates README.md` prints; `rigc templates NAME` prints the template of ours that yours stands in for.
    Source: templates place and escape what was computed; they reach no file and nothing inside rigc.
    """,
    "a template uses what it is given, in the form of the template engine",
    "templates/README.md",
)

OVER_LIMIT = Kind(
    "template-over-limit",
    Level.ERROR,
    """A template of your own takes more time or memory, or writes more, than any page needs, and was stopped.

    Why it matters: templates travel between shops, and one that never ends, whether by slip or by intent, must not
    take the machine down with it.
    What to do: look for a loop in a loop, a macro that calls itself, or a text that is repeated very often.
    Source: limits of our own, far above what the largest folder needs.
    """,
    "each document in at most 10 s, 512 MB of memory and 32 MB of text",
    "limits of our own, far above what the largest folder needs",
)


class TemplateMistake(Exception):
    """A template cannot be read or filled in; `line` counts from 1, and is 0 where no line is to blame.

    `help` is one thing to do. `over_limit` tells that the template was stopped. `text` is that of the file, so that its line
    can be shown; empty where it is not at hand.
    """

    def __init__(
        self, file: str, line: int, message: str, help: str = "", over_limit: bool = False, text: str = ""
    ) -> None:
        place = f"{file}:{line}" if line else file
        super().__init__(f"{place}: {message}")
        self.file = file
        self.line = line
        self.message = message
        self.help = help
        self.over_limit = over_limit
        self.text = text

    def finding(self) -> Diagnostic:
        """The finding that tells it."""
        kind = OVER_LIMIT if self.over_limit else BROKEN
        source = Source(self.file, self.text)
        span = _line(source, self.line) if self.text else Span(source, 0, 0)
        return kind.at(span, self.message, subject=(self.file,), help=self.help)


def _line(source: Source, number: int) -> Span:
    """What stands in a line; in the first where none is named."""
    number = min(max(number, 1), len(source.line_starts))
    text = source.line(number)
    start = source.line_starts[number - 1] + len(text) - len(text.lstrip())
    return Span(source, start, max(start + 1, source.line_starts[number - 1] + len(text.rstrip())))
