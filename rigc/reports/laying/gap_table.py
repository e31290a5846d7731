"""Lengths and their bounds -> a table that tells how far a layout is from what no layout beats, and why."""

from __future__ import annotations

from rigc.analysis.laying.gap import LeadGap
from rigc.reports.content import Cell, Column, Paragraph, Row, Table

_HOW = {"direct": "over the deck, side by side", "under": "down and up again", "stated": "both ends stand where stated"}


def gap_table(gaps: tuple[LeadGap, ...]) -> Table:
    """One row a lead, audio first, and the sums of audio and of the rest."""
    rows: list[Row] = []
    for name, mine in (
        ("audio", [gap for gap in gaps if gap.signal == "audio"]),
        ("others", [gap for gap in gaps if gap.signal != "audio"]),
    ):
        rows += [_row(gap) for gap in mine]
        if mine:
            finished, least = sum(gap.finished for gap in mine), sum(gap.least for gap in mine)
            rows.append(_cells(name, "", "", finished, least, f"{_percent(finished, least)} above the least", True))
    columns = (
        Column("lead"),
        Column("from"),
        Column("to"),
        Column("finished", "mm", number=True),
        Column("least", "mm", number=True),
        Column("more", "mm", number=True),
        Column("the least way"),
    )
    return Table(
        "gap", "Lead lengths and the least that any layout could give", columns, tuple(rows), "no lead has a length"
    )


def gap_note() -> Paragraph:
    """What the bound takes into account, and what not."""
    return Paragraph(
        "bound",
        (
            "The least of a lead is that of its two things alone on the deck: side by side in one row, as near as its two plugs "
            "and the bodies allow, or down through the deck and up again with the drop lines right at the plugs.",
            "All leads cannot have their least at once, so the gap is an upper bound of what a better layout could save.",
        ),
        heading="How the least is reckoned",
    )


def _row(gap: LeadGap) -> Row:
    return _cells(gap.mark, gap.start, gap.end, gap.finished, gap.least, _HOW[gap.how], False)


def _cells(mark: str, start: str, end: str, finished: int, least: int, how: str, total: bool) -> Row:
    texts = (mark, start, end, f"{finished / 10:g}", f"{least / 10:g}", f"{(finished - least) / 10:g}", how)
    return Row(tuple(map(Cell, texts)), total=total)


def _percent(finished: int, least: int) -> str:
    return f"{round(100 * (finished - least) / least)} %" if least else "?"
