"""What was malformed -> the message it deserves. Each mistake with a wording of its own is one small function here."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.near import nearest
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import words

_WRITTEN = "the language reference, grammar/README.md"
MALFORMED = Kind(
    "X01",
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
    "X02",
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
    "X03",
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
    "X04",
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
    **{word: f"{word} z {{" for word in ("rig", "scenario", "instrument", "amp", "desk", "unit", "supply", "cable")},
    **{word: f"{word} z {{" for word in ("plug", "strip", "blend", "deck", "panel", "case")},
    **{word: f"{word} {{" for word in ("midi", "control", "power", "place", "leads", "mounting", "tests", "spares")},
    "preset": "preset 1 {",
    "song": 'song "z" {',
    "as-built": "as-built Z {",
}


class Mistake(Record):
    """Where reading stopped: the span of what was found, its kind, what could have stood there, and the text around.

    `literals` are the grammar's reserved words by terminal, `homes` tells in which blocks a word begins a statement,
    `text` is the piece that was being read and `at` the offset in it.
    """

    span: Span
    kind: str
    expected: frozenset[str]
    literals: dict[str, str]
    homes: Callable[[str], list[str]]
    text: str
    at: int

    @property
    def word(self) -> str:
        """The whole word at the place."""
        found = re.compile(r"[^\s{},.\"#=>]+").match(self.text, self.at)
        return found.group() if found else self.text[self.at : self.at + 1]

    @property
    def before(self) -> str:
        """The line up to the place."""
        return self.text[self.text.rfind("\n", 0, self.at) + 1 : self.at]


def tell(mistake: Mistake) -> Diagnostic:
    """The finding for a mistake: the first wording that fits."""
    for wording in _WORDINGS:
        told = wording(mistake)
        if told is not None:
            message, label, help = told
            span = mistake.span
            if span.start == span.end or mistake.kind == "character":
                span = Span(span.source, span.start, span.start + max(1, len(mistake.word)))
            return MALFORMED.at(span, message, label=label, help=help)
    raise AssertionError("the last wording fits every mistake")


def too_many(span: Span, most: int) -> Diagnostic:
    """The finding that the rest of a block was not looked at."""
    return MALFORMED.at(
        span, f"{most} mistakes in one block; the rest of it was not read", help="mend these first and run again"
    )


def at_sight(source: Source) -> tuple[Diagnostic, ...]:
    """What can be said without parsing: an empty file, or signs that never belong in text."""
    control = re.search(r"[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff\ufffe\uffff]", source.text)
    if control:
        place = Span(source, control.start(), control.end())
        return (
            UNREADABLE.at(
                place,
                f"the sign U+{ord(control.group()):04X} is no text",
                label="this sign",
                help="save the file as plain text in UTF-8",
            ),
        )
    return ()


Wording = tuple[str, str, str]  # message, label, help


def _unclosed_text(m: Mistake) -> Wording | None:
    if m.kind == "character" and m.text[m.at] == '"':
        line = m.text[m.at : m.text.find("\n", m.at) if "\n" in m.text[m.at :] else len(m.text)]
        if re.match(r'"(?:\\.|[^"\\])*"', line):
            bad = re.search(r"\\[^\"\\n]", line)
            sign = bad.group() if bad else "\\"
            return (
                f"'{sign}' means nothing inside a text",
                "in this text",
                'write \\" for a quote, \\\\ for a backslash',
            )
        return "this text has no closing quote", "opened here", 'end it with " on the same line'
    return None


def _quotes(m: Mistake) -> Wording | None:
    if m.word[:1] in "\u201c\u201d\u201e\u00ab\u00bb'\u2018\u2019" and m.word:
        return f"{m.word[0]} is not the quote of this language", "a text begins here", 'use the plain quote "'
    return None


def _minus(m: Mistake) -> Wording | None:
    if m.word[:1] in "\u2212\u2013\u2014" and m.word:
        return f"{m.word[0]} is not a minus sign that can be read", "this sign", "use the plain hyphen: -20 dBu"
    return None


def _decimal_comma(m: Mistake) -> Wording | None:
    if m.text[m.at : m.at + 1] == ",":
        around = re.search(r"(\d+),$", m.before + ","), re.match(r",(\d+)", m.text[m.at :])
        if around[0] and around[1]:
            typed = f"{around[0][1]},{around[1][1]}"
            return f"'{typed}' is written with a comma", "a comma here", f"write {typed.replace(',', '.')} with a point"
    return None


def _capitals(m: Mistake) -> Wording | None:
    if "NAME" in m.expected and re.fullmatch(r"(?=.*[A-Z_])[A-Za-z0-9][A-Za-z0-9_-]*", m.word):
        name = re.sub(r"-+", "-", m.word.lower().replace("_", "-")).strip("-")
        return f"'{m.word}' is no name", "a name goes here", f"names are lower case with hyphens: {name}"
    return None


def _foreign_name(m: Mistake) -> Wording | None:
    if (
        m.kind == "character"
        and ("NAME" in m.expected or "MARK" in m.expected)
        and any(ord(sign) > 127 for sign in m.word)
    ):
        return (
            f"'{m.word}' holds signs that a name can't hold",
            "here",
            "names use a to z, digits and hyphens; put the full name in quotes behind it",
        )
    return None


def _lower_mark(m: Mistake) -> Wording | None:
    if "MARK" in m.expected and "NAME" not in m.expected and re.fullmatch(r"[a-z]+[0-9]*[a-z]?", m.word):
        return f"'{m.word}' is no mark", "a mark goes here", f"marks are in capitals: {m.word.upper()}"
    return None


def _near_keyword(m: Mistake) -> Wording | None:
    near = nearest(m.word, words.keywords(m.expected, m.literals))
    if near and m.word != near:
        return f"'{m.word}' means nothing here", f"did you mean '{near}'?", f"write '{near}'"
    return None


def _wrong_block(m: Mistake) -> Wording | None:
    if not m.before.strip() and m.word.isascii() and len(m.expected) > 8:
        homes = m.homes(m.word)
        if homes:
            blocks = " or ".join(f"'{home}'" for home in homes[:3])
            return f"'{m.word}' has no place here", "this statement", f"it belongs in a block of {blocks}"
    return None


def _closing(m: Mistake) -> Wording | None:
    if m.text[m.at : m.at + 1] == "}":
        if "_NL" in m.expected and m.before.strip():
            return "the closing brace stands at the end of a statement", "here", "put } on a line of its own"
        return "this closing brace closes nothing", "no block is open here", "delete it, or open its block with {"
    return None


def _no_unit_on_count(m: Mistake) -> Wording | None:
    counted = re.search(r"(\d+)[ \t]*$", m.before)
    if counted and re.match(r"[A-Za-z%]", m.word) and "UNIT" not in m.expected:
        return (
            f"'{m.word}' can't follow the number {counted[1]} here",
            f"expected {words.told(m.expected, m.literals)}",
            f"{counted[1]} is a plain number here; delete '{m.word}', or put it where it belongs",
        )
    return None


def _end_of_line(m: Mistake) -> Wording | None:
    if m.kind in ("_NL", "end of file") or m.text[m.at : m.at + 1] in ("\n", ""):
        expected = words.told(m.expected, m.literals)
        return f"the line ends where {expected} is due", "something is missing here", f"add {expected}"
    return None


def _anything(m: Mistake) -> Wording | None:
    expected = words.told(m.expected, m.literals)
    if m.expected == frozenset({"_NL"}) or (m.expected <= {"_NL", "MEASURED", "LEAFLET", "ASSUMED"}):
        return (
            f"'{m.word}' is one word too many",
            "the statement ends before it",
            f"delete it, or begin a new line before '{m.word}'",
        )
    return f"'{m.word}' can't stand here", f"expected {expected}", f"write {expected}"


_WORDINGS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _unclosed_text,
    _quotes,
    _minus,
    _decimal_comma,
    _end_of_line,
    _closing,
    _foreign_name,
    _near_keyword,
    _wrong_block,
    _capitals,
    _lower_mark,
    _no_unit_on_count,
    _anything,
)
