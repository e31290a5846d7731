"""Levels -> the level table: nominal and peak on every lead, what the input takes, and what to do."""

from __future__ import annotations

from rigc.analysis.signal.decibels import pad_ratio
from rigc.analysis.signal.levels.levels import LevelEdge
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import Answer, AnyFigure, Lacking

CANT_CHECK = "can't check"
_COLUMNS = (
    Column("lead"),
    Column("edge", least_mm=58),
    Column("nominal", "dBu", number=True, folds="nominal {}"),
    Column("peak", "dBu", number=True, folds="peak {}"),
    Column("max in", "dBu", number=True, folds="at most {} in"),
    Column("margin", "dB", number=True),
    Column("action", folds="{}"),
)


def edge_table(rig: Rig, edges: tuple[LevelEdge, ...]) -> Table:
    """One row for each audio lead, and for what goes through the air; first those where something is to be done."""
    ordered = sorted(edges, key=lambda edge: not _action(rig, edge))
    rows = tuple(_row(rig, edge) for edge in ordered)
    todo = sum(bool(_action(rig, edge)) for edge in edges)
    caption = f"Levels: {todo} with something to do stand first" if todo else "Levels: nothing to do at any lead"
    return Table("levels", caption if edges else "Levels", _COLUMNS, rows, empty="no audio leads")


def _row(rig: Rig, edge: LevelEdge) -> Row:
    only = (*edge.scenarios, *edge.instruments)
    where = f" ({', '.join(only)})" if only else ""
    passes = edge.end.thing in rig.panels
    return Row(
        (
            Cell(edge.mark, strong=True),
            Cell(f"{edge.start} → {edge.end}{where}"),
            _level(edge.nominal),
            _level(edge.peak),
            Cell("any") if passes or edge.most is None else _level(edge.most),
            Cell("") if passes or edge.margin is None else _level(edge.margin, strong=True),
            Cell(_action(rig, edge)),
        )
    )


def _level(level: AnyFigure | Answer, strong: bool = False) -> Cell:
    return Cell("?", mark=CANT_CHECK) if isinstance(level, Lacking) else figure_cell(level, strong=strong)


def _action(rig: Rig, edge: LevelEdge) -> str:
    """What to do, most urgent first; a pad also by the ratio of its two resistors."""
    told = []
    if edge.pad_db > 0:
        told.append(f"pad of at least {decimals(edge.pad_db)} dB (R1/R2 ≥ {decimals(pad_ratio(edge.pad_db), 2)})")
    if edge.short_db > 0:
        told.append(f"raise by at least {decimals(edge.short_db)} dB, or set the input to instrument level")
    if edge.lacking:
        told.append(f"find out what {' and '.join(edge.lacking)} {'gives' if len(edge.lacking) == 1 else 'give'}")
    if edge.maximum is None and edge.end.thing in rig.units:
        told.append(f"find out what {edge.end} takes")
    if edge.wants_line and edge.sensitivity is None:
        told.append(f"find out what drives {edge.end} fully")
    return "; ".join(told)
