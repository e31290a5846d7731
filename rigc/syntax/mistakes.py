"""What was malformed -> the finding it deserves. The wordings are in sign_slips, name_slips and statement_slips."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.source import Span
from rigc.syntax.mistake import Mistake
from rigc.syntax.slips.habit_slips import HABIT_SLIPS
from rigc.syntax.slips.hurried_slips import HURRIED_SLIPS
from rigc.syntax.slips.name_slips import NAME_SLIPS
from rigc.syntax.slips.order_slips import ORDER_SLIPS
from rigc.syntax.slips.sign_slips import SIGN_SLIPS
from rigc.syntax.slips.spread_slips import SPREAD_SLIPS, without_spreads
from rigc.syntax.slips.statement_slips import LAST_RESORT, STATEMENT_SLIPS
from rigc.syntax.slips.trade_slips import TRADE_SLIPS, in_our_words
from rigc.syntax.worked_lines import as_in_the_reference

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


def tell(mistake: Mistake) -> Diagnostic:
    """The finding for a mistake: the first wording that fits."""
    plain = without_spreads(mistake)
    for wording, seen in (*((each, mistake) for each in SPREAD_SLIPS), *((each, plain) for each in _WORDINGS)):
        told = wording(seen)
        if told is not None:
            span = mistake.span
            if f"'{mistake.whole}'" in told.message:
                start = span.start + len(mistake.word) - len(mistake.whole)
                span = Span(span.source, start, start + len(mistake.whole))
            elif span.start == span.end or mistake.kind == "character":
                span = Span(span.source, span.start, span.start + max(1, len(mistake.word)))
            line = as_in_the_reference(mistake.block, in_our_words(mistake.code)) if told.mends else ""
            return MALFORMED.at(span, told.message, label=told.label, help=told.help, mends=told.mends, otherwise=line)
    raise AssertionError("the last wording fits every mistake")


def too_many(span: Span, most: int, where: str) -> Diagnostic:
    """The finding that the rest of a block or file was not looked at."""
    return MALFORMED.at(
        span, f"{most} mistakes in one {where}; the rest of it was not read", help="put these right first and run again"
    )


_WORDINGS = (
    *ORDER_SLIPS,
    *HURRIED_SLIPS,
    *HABIT_SLIPS,
    *SIGN_SLIPS,
    *NAME_SLIPS,
    *TRADE_SLIPS,
    *STATEMENT_SLIPS,
    *LAST_RESORT,
)
