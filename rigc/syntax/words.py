"""Terminal names of the grammar -> words for people."""

from __future__ import annotations

_WORDS = {
    "NAME": "a name",
    "MARK": "a mark in capitals such as A14",
    "NUMBER": "a number",
    "UNIT": "a unit",
    "STRING": "a text in quotes",
    "DATE": "a date such as 2026-03-02",
    "_NL": "the end of the line",
    "_X": "'x' and a number",
    "$END": "the end of the file",
}

BETWEEN = frozenset({"and", "at", "by", "for", "from", "in", "into", "of", "on", "to", "with"})
"""Small words that stand between two others and are easily taken for each other."""
_MOST = 6
"""So many things that may stand at a place are told; then how many more there are."""


def told(expected: frozenset[str], literals: dict[str, str]) -> str:
    """`expected` as one phrase: what may stand here. Long lists are cut to `_MOST` and say how many more there are."""
    classes = [word for name, word in _WORDS.items() if name in expected]
    shown = [*classes, *(f"'{word}'" for word in signs(expected, literals))]
    more = len(shown) - _MOST
    if more > 1:
        return f"{', '.join(shown[:_MOST])} or one of {more} more"
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} or {shown[-1]}" if shown else "nothing more"


def signs(expected: frozenset[str], literals: dict[str, str]) -> list[str]:
    """The reserved words and signs among `expected`, in the grammar's order."""
    return [word for name, word in literals.items() if name in expected and name not in _WORDS]


def keywords(expected: frozenset[str], literals: dict[str, str]) -> list[str]:
    """The reserved words among `expected`, in the grammar's order."""
    return [word for word in signs(expected, literals) if word[0].isalpha()]
