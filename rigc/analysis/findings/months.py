"""A day and a number of months -> the day so long before."""

from __future__ import annotations


def months_before(day: str, months: int) -> str:
    """The same day of the month so many months before, as an ISO date; it only serves to be compared with others."""
    year, month, rest = int(day[:4]), int(day[5:7]), day[7:]
    count = year * 12 + month - 1 - months
    return f"{count // 12:04}-{count % 12 + 1:02}{rest}"
