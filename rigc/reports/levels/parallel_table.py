"""Parallel paths -> their table: polarity, latency, nulls and the loss at the lowest note, wherever sound goes side by side."""

from __future__ import annotations

from math import isfinite

from rigc.analysis.signal.comb import null_depth_db
from rigc.analysis.signal.leg import Leg
from rigc.analysis.signal.parallel import AMP_LOOP, AMPS, DESK, Parallel
from rigc.analysis.signal.turned_words import when_turned
from rigc.diagnostics.decimals import decimals
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.levels.edge_table import CANT_CHECK

_COLUMNS = (
    Column("at"),
    Column("paths"),
    Column("polarity"),
    Column("apart", "ms", number=True),
    Column("first nulls", "Hz", number=True),
    Column("lost at low E", "dB", number=True),
    Column("remarks"),
)


def parallel_table(paths: tuple[Parallel, ...]) -> Table:
    """One row for each place where paths meet, for an amp's own loop, and for amps that are used together."""
    rows = tuple(_row(each) for each in paths)
    return Table("parallel_paths", "Parallel paths", _COLUMNS, rows, empty="no paths side by side")


def _row(paths: Parallel) -> Row:
    where = f" ({', '.join(paths.scenarios)})" if paths.scenarios else ""
    at = f"{paths.at}, own loop" if paths.kind == AMP_LOOP else paths.at
    alone = len(paths.legs) < 2
    return Row(
        (
            Cell(f"{at}{where}", strong=True),
            Cell("; ".join(_leg(paths, each) for each in paths.legs)),
            Cell("") if alone else _polarity(paths),
            _apart(paths),
            Cell("") if alone else _nulls(paths),
            Cell("") if alone else _loss(paths),
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


def _apart(paths: Parallel) -> Cell:
    """The difference; for a loop in series what it adds."""
    if len(paths.legs) < 2:
        late = paths.legs[0].latency_ms
        return Cell("?", mark=CANT_CHECK) if late is None else Cell(f"+{decimals(late, 2)}")
    apart = paths.apart_ms
    return Cell("?", mark=CANT_CHECK) if apart is None else Cell(decimals(apart, 2))


def _nulls(paths: Parallel) -> Cell:
    if paths.apart_ms is None:
        return Cell("?", mark=CANT_CHECK)
    return Cell(", ".join(decimals(each, 0) for each in paths.nulls_hz) or "none")


def _loss(paths: Parallel) -> Cell:
    loss = paths.low_loss_db
    if loss is None:
        return Cell("?", mark=CANT_CHECK)
    return Cell(decimals(-loss) if isfinite(loss) else "all")


def _remarks(paths: Parallel) -> list[str]:
    told = []
    if paths.kind == AMP_LOOP:
        told.append(f"loop in {paths.mix}" if paths.mix else "series or parallel is not said")
    if paths.kind == DESK:
        told.append("where the desk sums them")
    if paths.kind == AMPS and paths.apart_ms:
        told.append("they meet in the air: the nulls move with the listener")
    late, early = paths.late.share, paths.early.share
    if paths.shared_out and paths.nulls_hz and late is not None and early:
        depth = null_depth_db(late / early)
        told.append(f"nulls {decimals(-depth)} dB deep" if isfinite(depth) else "nulls down to nothing")
    elif not paths.shared_out and len(paths.legs) > 1 and paths.low_loss_db:
        told.append("reckoned at equal shares")
    told += [f"latency of {name} is not known" for name in paths.untimed]
    dry = dict.fromkeys(name for leg in paths.legs for name in leg.dry_left)
    told += [f"{name} leaves dry sound in a wet path" for name in dry]
    tails = dict.fromkeys(name for leg in paths.legs for name in leg.tails if leg.wet)
    told += [f"the tail of {name} rings on behind the send" for name in tails]
    return told
