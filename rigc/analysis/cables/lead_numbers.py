"""The marks that the source gives and retires -> numbers for the leads that have none; a given number never changes."""

from __future__ import annotations

import re
from collections.abc import Iterable

LETTERS = {"audio": "A", "control": "C", "dc": "D", "midi": "M", "usb": "U", "ac": "AC", "mains": "N"}
_MARK = re.compile(r"([A-Z]+)(\d+)([a-z]?)")


class LeadNumbers:
    """Gives numbers above every one that is in use or retired, letter by letter, as wide as those that are in use."""

    def __init__(self, taken: Iterable[str]) -> None:
        self._highest: dict[str, int] = {}
        self._width: dict[str, int] = {}
        for letter, digits, _ in filter(None, map(mark_parts, taken)):
            self._highest[letter] = max(self._highest.get(letter, 0), int(digits))
            if digits.startswith("0"):
                self._width[letter] = max(self._width.get(letter, 1), len(digits))

    def next(self, signal: str) -> str:
        """A fresh mark for a lead of that signal."""
        letter = LETTERS[signal]
        self._highest[letter] = self._highest.get(letter, 0) + 1
        return f"{letter}{self._highest[letter]:0{self._width.get(letter, 1)}d}"


def mark_parts(mark: str) -> tuple[str, str, str] | None:
    """Letters, digits and leg (`D2a` -> `D`, `2`, `a`); None for a mark that is not made so."""
    found = _MARK.fullmatch(mark)
    return None if found is None else (found[1], found[2], found[3])


def without_leg(mark: str) -> str:
    """The number that the legs of a Y lead share (`D2a` -> `D2`)."""
    parts = mark_parts(mark)
    return mark if parts is None else parts[0] + parts[1]


def in_order(mark: str) -> tuple[str, int, str]:
    """Key that sorts marks as people count: `A2` before `A10`."""
    parts = mark_parts(mark)
    return (mark, 0, "") if parts is None else (parts[0], int(parts[1]), parts[2])
