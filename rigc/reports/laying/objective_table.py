"""What a layout costs -> the table of the terms, each with its value, its weight, and what it comes to."""

from __future__ import annotations

from rigc.analysis.laying.objective import LayoutTerm, Objective
from rigc.reports.content import Cell, Column, Paragraph, Row, Table

_COLUMNS = (
    Column("term"),
    Column("counted", number=True),
    Column("unit"),
    Column("weight", "%", number=True),
    Column("costs", "mm", number=True),
    Column("in cable"),
)


def objective_table(objective: Objective | None) -> Table:
    """One row a term, and the sum; costs are in millimetres of audio lead."""
    rows = [] if objective is None else [_row(term) for term in objective.terms]
    if objective is not None:
        texts = ("in all", "", "", "", millimetres(objective.cost), _money(objective))
        rows.append(Row(tuple(map(Cell, texts)), total=True))
    caption = "What this layout costs, in millimetres of audio lead"
    return Table("objective", caption, _COLUMNS, tuple(rows), "the deck has no size")


def objective_note() -> Paragraph:
    """How to read the terms, and how to set their weights."""
    return Paragraph(
        "weights",
        (
            "Places that are chosen break no rule, meet the wishes as far as can be, and then make the sum of these terms least.",
            "Set the weight of a term in a place block: `weigh bare deck 200 %`. The time of soldering is the same in every "
            "layout, since the same leads are made.",
        ),
        heading="How it is weighed",
    )


def millimetres(cost: int) -> str:
    """Hundredths of tenths of a millimetre as millimetres."""
    return f"{cost / 1000:.0f}"


def _row(term: LayoutTerm) -> Row:
    counted = str(term.counted) if term.pieces else f"{term.counted / 10:g}"
    share = "various" if term.share is None else str(term.share)
    money = "" if term.money is None else f"{term.money[0]:.2f} {term.money[1]}"
    return Row(
        tuple(map(Cell, (term.name, counted, "" if term.pieces else "mm", share, millimetres(term.cost), money)))
    )


def _money(objective: Objective) -> str:
    sums: dict[str, float] = {}
    for term in objective.terms:
        if term.money is not None:
            sums[term.money[1]] = sums.get(term.money[1], 0.0) + term.money[0]
    return ", ".join(f"{amount:.2f} {currency}" for currency, amount in sums.items())
