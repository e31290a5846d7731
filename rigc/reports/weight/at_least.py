"""A sum of what is known -> its cell: where something is left out, it is at least so much."""

from __future__ import annotations

from rigc.reports.content import Cell
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import Figure, incomplete


def at_least(figure: Figure, *, strong: bool = False) -> Cell:
    """Marked where it is incomplete."""
    return Cell(figure.text, mark="at least") if incomplete(figure) else figure_cell(figure, strong=strong)
