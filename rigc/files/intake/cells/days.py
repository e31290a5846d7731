"""A day as people write it -> year-month-day."""

from __future__ import annotations

import re
from datetime import date

from rigc.files.intake.cells.unclear import Unclear

_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_DO = "write it as year-month-day, such as 2026-03-02"


def day(typed: str) -> str:
    """The day. Raises `Unclear` for one that can be read in two ways."""
    text = " ".join(typed.replace(",", " ").split()).lower()
    for pattern, order in (
        (r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})", "ymd"),
        (r"(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})", "dmy"),
    ):
        found = re.fullmatch(pattern, text)
        if found:
            return _day(typed, **dict(zip(order, map(int, found.groups()), strict=True)))
    found = re.fullmatch(r"(\d{1,2})[/-](\d{1,2})[/-](\d{4})", text)
    if found:
        first, second, year = map(int, found.groups())
        if first <= 12 and second <= 12 and first != second:
            raise Unclear(f"'{typed}' may be day {first} of month {second} or day {second} of month {first}", _DO)
        return _day(typed, year, second if first > 12 else first, first if first > 12 else second)
    words = re.fullmatch(r"(?:(\d{1,2})(?:st|nd|rd|th)?\.? )?([a-z]+)\.?(?: (\d{1,2})(?:st|nd|rd|th)?)? (\d{4})", text)
    if words and words[2][:3] in _MONTHS and bool(words[1]) != bool(words[3]):
        return _day(typed, int(words[4]), _MONTHS.index(words[2][:3]) + 1, int(words[1] or words[3]))
    raise Unclear(f"'{typed}' is not one day", _DO)


def _day(typed: str, y: int, m: int, d: int) -> str:
    try:
        return date(y, m, d).isoformat()
    except ValueError:
        raise Unclear(f"there is no day '{typed}'", _DO) from None
