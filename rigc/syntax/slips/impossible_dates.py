"""A file -> its dates that no calendar has (2026-02-30) or nobody means (3026-03-02): they read well, and an accept until then would
never end right."""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span
from rigc.syntax.mistakes import MALFORMED
from rigc.syntax.slips.name_slips import MONTHS

FIRST_YEAR, LAST_YEAR = 1950, 2099

_DATES = re.compile(r'"(?:\\.|[^"\\\n])*"|#[^\n]*|(?<![\w.-])(\d{4})-(\d\d)-(\d\d)(?![\w-])')


def impossible_dates(source: Source) -> tuple[Diagnostic, ...]:
    """One finding for each; texts and remarks are not looked at."""
    found = (each for each in _DATES.finditer(source.text) if each[1])
    return tuple(_told(source, each) for each in found if not _is_day(int(each[1]), int(each[2]), int(each[3])))


def _is_day(year: int, month: int, day: int) -> bool:
    return FIRST_YEAR <= year <= LAST_YEAR and 1 <= month <= 12 and (1 <= day <= 28 or 28 < day <= _days(year, month))


def _days(year: int, month: int) -> int:
    from calendar import monthrange  # only for days at a month's end

    return monthrange(year, month)[1]


def _why(year: int, month: int) -> str:
    if not FIRST_YEAR <= year <= LAST_YEAR:
        return f"write a year from {FIRST_YEAR} to {LAST_YEAR}"
    if not 1 <= month <= 12:
        return "the month stands in the middle, 01 to 12: year-month-day, as 2026-03-02"
    return f"look up the day: {MONTHS[month - 1]} {year} has {_days(year, month)}"


def _told(source: Source, date: re.Match[str]) -> Diagnostic:
    return MALFORMED.at(
        Span(source, date.start(), date.end()),
        f"there is no such date as {date[0]}"
        if FIRST_YEAR <= int(date[1]) <= LAST_YEAR
        else f"{date[0]} is no date of a rig",
        label="this date",
        help=_why(int(date[1]), int(date[2])),
    )
