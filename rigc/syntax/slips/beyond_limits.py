"""A file -> what in it is longer or more than rigc takes: names and texts that no page has room for, more lines than a rig has.

The limits lie far beyond what a person writes; they bound what one file can cost, and catch a file that a program wrote wrongly.
"""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.source import Source, Span

LONGEST_NAME = 64
LONGEST_TEXT = 10_000
MOST_LINES = 50_000
"""Of a rig with all files that it uses."""
MOST_LIKES = 100
"""So deep things may be `like` each other."""

BEYOND_LIMIT = Kind(
    "beyond-limit",
    Level.ERROR,
    f"""A name, a text or the whole rig is larger than rigc takes: {LONGEST_NAME} signs a name, {LONGEST_TEXT} a text, {MOST_LINES} lines with all
    files that it uses, {MOST_LIKES} things that are each like the next.

    Why it matters: no label, cell or page has room for it, and the time that a rig takes has a bound only if its parts have one.
    What to do: shorten it; a long note is a file of its own beside the rig.
    Source: what rigc takes, the language reference.
    """,
    f"a name has at most {LONGEST_NAME} signs, a text {LONGEST_TEXT}, a rig {MOST_LINES} lines; likes go {MOST_LIKES} deep",
    "the language reference, grammar/README.md",
)

_LONG = re.compile(rf'"(?P<text>[^"\\\n]*(?:\\.[^"\\\n]*)*)"|#[^\n]*|(?P<name>[A-Za-z][\w-]{{{LONGEST_NAME},}})')
_LONG_WORD = re.compile(rf"[\w-]{{{LONGEST_NAME + 1}}}")


def beyond_limits(source: Source) -> tuple[Diagnostic, ...]:
    """One finding for each name and text that is too long; nothing is looked for in a file without a long word or line."""
    if not _LONG_WORD.search(source.text) and max(map(len, source.text.split("\n"))) <= LONGEST_TEXT:
        return ()
    return tuple(told for each in _LONG.finditer(source.text) if (told := _told(source, each)))


def too_many_lines(source: Source, first: int) -> Diagnostic:
    """The finding on a file that is not read, at its first line (from 1) that is one too many."""
    start = source.line_starts[first - 1]
    return BEYOND_LIMIT.at(
        Span(source, start, start + len(source.line(first))),
        f"with this line the rig has more than {MOST_LINES}; '{source.name}' is not read",
        label="one too many",
        help="make two rigs of it",
    )


def _told(source: Source, found: re.Match[str]) -> Diagnostic | None:
    if found["name"]:
        signs, most, what = len(found["name"]), LONGEST_NAME, "name"
    elif found["text"] and len(found["text"]) > LONGEST_TEXT:
        signs, most, what = len(found["text"]), LONGEST_TEXT, "text"
    else:
        return None
    return BEYOND_LIMIT.at(
        Span(source, found.start(), found.end()),
        f"a {what} of {signs} signs; a {what} may have {most}",
        label=f"this {what}",
        help=f"shorten the {what}" if what == "name" else "shorten the text, or keep it in a file beside the rig",
    )
