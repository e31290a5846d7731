"""A row of a board worked by hand, as text -> its lead and the figures that shall come out, in tenths of a millimetre."""

from __future__ import annotations

from typing import NamedTuple

from boards_by_hand import lead

from rigc.analysis.leads.leads import Lead


class Row(NamedTuple):
    lead: Lead
    kind: str
    exits: tuple[tuple[int, ...], ...]
    drops: tuple[int, ...]
    horizontal: tuple[int, ...]
    vertical: tuple[int, ...]
    slack: int
    finished: int
    cut: int | None
    premade: int | None


def worked_rows(text: str) -> list[Row]:
    return [_row(*line.split()) for line in text.strip().splitlines()]


def _row(mark: str, start: str, end: str, plug: str, other: str, kind: str, *figures: str) -> Row:
    out, back, drops, horizontal, vertical, slack, finished, cut, premade = figures
    return Row(
        lead(mark, start, end, f"{plug} {other}"),
        kind,
        (_tenths(out, ","), _tenths(back, ",")),
        _tenths(drops, ","),
        _tenths(horizontal, "+"),
        _tenths(vertical, "+"),
        _one(slack),
        _one(finished),
        None if cut == "-" else _one(cut),
        None if premade == "-" else _one(premade),
    )


def _tenths(text: str, between: str) -> tuple[int, ...]:
    return () if text == "-" else tuple(_one(part) for part in text.split(between))


def _one(text: str) -> int:
    """Digits only, no floats: `712.8` is 7128."""
    whole, _, part = text.partition(".")
    return int(whole) * 10 + int(part or 0)
