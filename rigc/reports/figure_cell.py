"""A figure -> the cell that shows it: its text, and whether it rests on an assumed fact or leaves out what is not known."""

from __future__ import annotations

from rigc.reports.content import Cell
from rigc.traced.figure import Answer, AnyFigure, Basis, Lacking, assumed, incomplete
from rigc.traced.reason import NOT_KNOWN


def figure_cell(
    figure: AnyFigure | Answer | None, *, strong: bool = False, lacking: str = "?", with_unit: bool = False
) -> Cell:
    """`lacking` is written where it is not known; `with_unit` where the column has no unit."""
    if figure is None or isinstance(figure, Lacking) or figure.text == NOT_KNOWN:
        return Cell(lacking)
    unit = f" {figure.unit}" if with_unit and figure.unit else ""
    return Cell(figure.text + unit, strong, mark(figure), why=figure.name)


def told_cell(told: AnyFigure | Answer | None) -> Cell:
    """The cell of a table that marks what is not known; empty where there is nothing to tell."""
    if isinstance(told, Lacking):
        return Cell("", mark=NOT_KNOWN)
    return Cell("") if told is None else figure_cell(told)


def mark(figure: Basis) -> str:
    """What is set beside it."""
    return "incomplete" if incomplete(figure) else "assumed" if assumed(figure) else ""
