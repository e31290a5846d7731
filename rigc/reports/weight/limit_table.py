"""Masses, balances and what cases hold -> the table of each beside its limit."""

from __future__ import annotations

from rigc.analysis.weight.case_loads import CaseLoad, CaseLoads, Margin
from rigc.facts import weight
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.worst_first import worst_first
from rigc.traced.figure import Figure, Lacking, assumed, incomplete


def at_least(figure: Figure, *, strong: bool = False) -> Cell:
    """Marked where it is incomplete."""
    return Cell(figure.text, mark="at least") if incomplete(figure) else figure_cell(figure, strong=strong)


_COLUMNS = (
    Column("limit"),
    Column("at most", "kg", number=True, key="most"),
    Column("weighs", "kg", number=True),
    Column("left", "kg", number=True),
    Column("source"),
)
_LOADS = (
    Column("case"),
    Column("decks"),
    Column("with all on them", "kg", number=True, key="board"),
    Column("empty case", "kg", number=True, key="empty"),
    Column("together", "kg", number=True),
)


def limit_table(loads: CaseLoads) -> Table:
    """For each case the limit of one lifter (the source's, else ours), and each other limit that the source states."""
    rows = []
    for load in loads.all:
        for margin in load.margins:
            whose = margin.limit.whose
            rows.append(_row(whose if len(loads.all) == 1 else f"{whose}: {load.name}", margin))
    return Table(
        "limits",
        "Limits, with the case",
        _COLUMNS,
        worst_first(rows),
        empty="which case holds which deck is not stated",
    )


def load_table(loads: CaseLoads) -> tuple[Table, ...]:
    """What each case weighs with its decks, where there is more than one to lift."""
    if len(loads.all) < 2:
        return ()
    return (Table("loads", "Case by case", _LOADS, tuple(map(_load, loads.all))),)


def _load(load: CaseLoad) -> Row:
    mass = load.mass
    empty = next((case.mass for case in mass.cases), None)
    return Row(
        (
            Cell(load.case or "no case"),
            Cell(", ".join(load.decks)),
            at_least(mass.board_known),
            Cell("")
            if empty is None
            else Cell("", mark="missing")
            if isinstance(empty, Lacking)
            else figure_cell(empty),
            at_least(mass.whole_known, strong=not mass.missing),
        )
    )


def _row(words: str, margin: Margin) -> Row:
    stated, left = margin.limit.stated, margin.left
    mark = "FAIL" if margin.passed else "at most" if incomplete(left) else "assumed" if assumed(left) else ""
    source = weight.ONE_LIFTER_KG.source if stated is None else stated.source or "stated"
    return Row(
        (Cell(words), figure_cell(margin.most), at_least(margin.weighs), Cell(left.text, mark=mark), Cell(source))
    )
