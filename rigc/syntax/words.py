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


def told(expected: frozenset[str], literals: dict[str, str], most: int = 6) -> str:
    """`expected` as one phrase: what may stand here. Long lists are cut to `most` and say how many more there are."""
    classes = [word for name, word in _WORDS.items() if name in expected]
    words = sorted(f"'{literals[name]}'" for name in expected if name not in _WORDS and name in literals)
    shown = [*classes, *words]
    more = len(shown) - most
    if more > 1:
        return f"{', '.join(shown[:most])} or one of {more} more"
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} or {shown[-1]}" if shown else "nothing more"


def keywords(expected: frozenset[str], literals: dict[str, str]) -> list[str]:
    """The reserved words among `expected`."""
    return sorted(literals[name] for name in expected if name not in _WORDS and literals.get(name, "-")[0].isalpha())
