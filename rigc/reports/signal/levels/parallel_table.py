"""Parallel paths -> their table: polarity, latency, notches and the loss at the lowest note, wherever sound goes side by side."""

from __future__ import annotations

from rigc.analysis.signal.parallel.comb_words import depth_told, note_told
from rigc.analysis.signal.parallel.leg import Leg
from rigc.analysis.signal.parallel.parallel import AMP_LOOP, AMPS, DESK, Parallel
from rigc.analysis.signal.parallel.parallel_figures import ParallelFigures
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.analysis.signal.parallel.turned_words import state_told, when_turned
from rigc.diagnostics.decimals import decimals
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.signal.levels.edge_table import CANT_CHECK
from rigc.traced.figure import Answer, AnyFigure, Lacking

_COLUMNS = (
    Column("at"),
    Column("paths"),
    Column("polarity"),
    Column("apart", "ms", number=True),
    Column("first notches", "Hz", number=True),
    Column("lost at lowest note", "dB", number=True),
    Column("remarks"),
)


def parallel_table(paths: ParallelPaths) -> Table:
    """One row for each place where paths meet, for an amp's own loop, and for amps that are used together."""
    rows = tuple(_row(*each) for each in zip(paths.all, paths.figures, strict=True))
    return Table("parallel_paths", "Parallel paths", _COLUMNS, rows, empty="")


def _row(paths: Parallel, figures: ParallelFigures) -> Row:
    where = f" ({', '.join(paths.scenarios)})" if paths.scenarios else ""
    at = f"{paths.at}, own loop" if paths.kind == AMP_LOOP else paths.at
    alone = len(paths.legs) < 2
    return Row(
        (
            Cell(f"{at}{where}", strong=True),
            Cell("; ".join(_leg(paths, each) for each in paths.legs)),
            Cell("") if alone else _polarity(paths),
            _cell(figures.apart),
            _cell(figures.notches),
            _cell(figures.loss),
            Cell("; ".join(_remarks(paths))),
        )
    )


def _leg(paths: Parallel, leg: Leg) -> str:
    share = "" if leg.share is None else f" {decimals(leg.share)} %"
    flipped = " inverted" if leg.flipped else ""
    through = [name for name in leg.things if name != leg.label]
    way = f": {' → '.join(through)}" if through and not leg.label.endswith(", ".join(through)) else ""
    wet = " (wet)" if leg.wet and paths.kind == AMPS else ""
    return f"{leg.label}{wet}{share}{flipped}{way}"


def _polarity(paths: Parallel) -> Cell:
    silent = (*paths.unsure, *paths.unsaid)
    if silent and not paths.turned:
        return Cell(f"unknown: {', '.join(silent)}", mark=CANT_CHECK)
    return Cell(f"opposite {when_turned(paths)}", strong=True) if paths.turned else Cell("equal")


def _cell(figure: AnyFigure | Answer | None) -> Cell:
    """Empty for a loop in series, of which there is no such figure."""
    if figure is None:
        return Cell("")
    return Cell("?", mark=CANT_CHECK) if isinstance(figure, Lacking) else figure_cell(figure)


def _remarks(paths: Parallel) -> list[str]:
    told = []
    if paths.kind == AMP_LOOP:
        told.append(f"loop in {paths.mix}" if paths.mix else "series or parallel is not said")
    if paths.kind == DESK:
        told.append("where the desk sums them")
    if paths.kind == AMPS and paths.apart_ms:
        told.append("they meet in the air: the notches move with the listener")
    told += _comb(paths)
    told += [f"latency of {name} is not known" for name in paths.untimed]
    dry = dict.fromkeys(name for leg in paths.legs for name in leg.dry_left)
    told += [f"{name} leaves dry sound in a wet path" for name in dry]
    echoes = dict.fromkeys(name for leg in paths.legs for name in leg.wet_only)
    told += [f"{name} is set to wet only: its way is not compared" for name in echoes]
    tails = dict.fromkeys(name for leg in paths.legs for name in leg.tails if leg.wet)
    told += [f"the tail of {name} rings on behind the send" for name in tails]
    return told


def _comb(paths: Parallel) -> list[str]:
    """How deep the notches are, and for which state and note the loss is told."""
    if len(paths.combing) < 2:
        return []
    told, found, loss = [], paths.notches, paths.worst_low_loss
    if found:
        depths = [depth_told(each) for each in found]
        told.append(f"notches: {', '.join(depths) if len({*depths}) > 1 else depths[0]}")
    if loss is not None and loss.db < 0:
        state = state_told(paths, loss.on)
        told.append(f"lost at {note_told(loss.note)}{f', {state}' if state else ''}".replace("'", ""))
    if not paths.shared_out and loss is not None and (found or loss.db < 0):
        told.append("reckoned at equal shares")
    return told
