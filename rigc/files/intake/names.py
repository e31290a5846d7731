"""What people call their units -> names of the language, each once."""

from __future__ import annotations

import re
import unicodedata

_LETTERS = {"ß": "ss", "æ": "ae", "ø": "o", "đ": "d", "ł": "l", "œ": "oe", "þ": "th", "&": " and ", "+": " plus "}


def name_of(typed: str) -> str:
    """The name in small letters, digits and single hyphens; empty where nothing of it is left that can begin one."""
    text = "".join(_LETTERS.get(sign, sign) for sign in typed.lower())
    plain = "".join(sign for sign in unicodedata.normalize("NFKD", text) if not unicodedata.combining(sign))
    name = re.sub(r"[^a-z0-9]+", "-", re.sub(r"(?<=\w)['’](?=\w)", "", plain)).strip("-")
    return name if re.match("[a-z]", name) else f"unit-{name}" if name else ""


def free_name(name: str, taken: frozenset[str]) -> str:
    """The name, or with the least number behind it that nobody has."""
    if name not in taken:
        return name
    return next(made for number in range(2, len(taken) + 3) if (made := f"{name}-{number}") not in taken)
