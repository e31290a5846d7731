"""The kinds of what is malformed; how a mistake is told, `wordings.py` says."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.source import Span

_WRITTEN = "the language reference, grammar/README.md"
MALFORMED = Kind(
    "malformed-statement",
    Level.ERROR,
    """A statement is not written as the language wants it.

    Why it matters: rigc can't tell what is meant, and guessing would put a wrong number on a lead.
    What to do: look at the words that may stand at that place; the language reference shows a line for each statement.
    Source: the language reference, grammar/README.md.
    """,
    "one fact a line, as in the language reference",
    _WRITTEN,
)
UNCLOSED = Kind(
    "unclosed-block",
    Level.ERROR,
    """A block has an opening brace and no closing one, or the reverse.

    Why it matters: all that follows would be read as part of the wrong thing.
    What to do: close each block with } on a line of its own.
    Source: the language reference, grammar/README.md.
    """,
    "each { has its }",
    _WRITTEN,
)
NESTED = Kind(
    "nested-block",
    Level.ERROR,
    """A block stands inside a block.

    Why it matters: blocks of this language do not nest; most often a closing brace is missing further up.
    What to do: close the outer block, or write the inner one outside.
    Source: the language reference, grammar/README.md.
    """,
    "blocks do not nest",
    _WRITTEN,
)
UNREADABLE = Kind(
    "unreadable-text",
    Level.ERROR,
    """The file holds bytes or signs that are no text of this language.

    Why it matters: a file that is not plain text was probably saved by another program, or damaged.
    What to do: save it as plain text in UTF-8.
    Source: the language reference, grammar/README.md.
    """,
    "a .rig file is plain text in UTF-8",
    _WRITTEN,
)

BLOCK_OPENERS = {
    **{word: f"{word} z {{" for word in ("unit", "amp", "desk", "supply", "instrument", "rig", "scenario", "cable")},
    **{word: f"{word} z {{" for word in ("plug", "strip", "blend", "deck", "panel", "case")},
    **{word: f"{word} {{" for word in ("midi", "control", "power", "place", "leads", "mounting", "tests", "spares")},
    **{word: f"{word} z {{" for word in ("source", "listener", "mains-strip")},
    "all-units": "all-units {",
    "preset": "preset 1 {",
    "song": 'song "z" {',
    "as-built": "as-built Z {",
}


def too_many(span: Span, most: int, where: str) -> Diagnostic:
    """The finding that the rest of a block or file was not looked at."""
    return MALFORMED.at(
        span, f"{most} mistakes in one {where}; the rest of it was not read", help="put these right first and run again"
    )
