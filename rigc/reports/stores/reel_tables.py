"""What each cable takes -> the table of metres with waste and spare ends, and how that comes off the reels."""

from __future__ import annotations

from rigc.analysis.stores.reel_uses import ReelUse, ReelUses
from rigc.diagnostics.figures import metres_cut, millimetres
from rigc.facts.bench import REEL_MM, SPARE_ENDS
from rigc.facts.leads import WASTE_SHARE
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell

_WASTE = f"{100 * WASTE_SHARE.value:g} %"
_REEL = f"{REEL_MM.value / 1000:g} m"
_TOTALS = (
    Column("stock"),
    Column("pieces", number=True),
    Column("cut", "m", number=True),
    Column(f"with {_WASTE} waste", "m", number=True, key="with_waste"),
    Column(f"{SPARE_ENDS.value:g} spare ends", "mm", number=True, key="spare_ends"),
    Column("take", "m", number=True),
)
_REELS = (
    Column("stock"),
    Column(f"reels of {_REEL}", number=True, key="reels"),
    Column("least that would do", number=True, key="least"),
    Column("from each reel"),
    Column("left on the last", "m", number=True, key="left"),
)


def cut_totals(uses: ReelUses) -> Table:
    """Metres of each stock: as cut, with the usual waste rounded up to a centimetre, and with the spare ends."""
    rows = (
        Row(
            (
                _stock(use),
                figure_cell(use.pieces),
                figure_cell(use.cut),
                figure_cell(use.with_waste),
                figure_cell(use.spare_ends),
                figure_cell(use.take, strong=True),
            )
        )
        for use in uses.all
    )
    return Table("cut-totals", "Cable to cut from", _TOTALS, tuple(rows), empty="nothing to cut")


def reel_table(uses: ReelUses) -> Table | None:
    """The reels each stock takes if they are full, and whether fewer would do; None if nothing is cut."""
    caption = f"Reel use, from full reels, {_WASTE} waste and the spare ends set aside on each"
    return Table("reels", caption, _REELS, tuple(map(_reels, uses.all))) if uses.all else None


def _reels(use: ReelUse) -> Row:
    plan = use.plan
    each = "; ".join(f"{len(raw)} piece{'s' if len(raw) != 1 else ''}, {metres_cut(sum(raw))} m" for raw in plan.raws)
    too_long = f"too long for a reel: {', '.join(map(millimetres, plan.too_long))} mm" if plan.too_long else ""
    return Row(
        (
            _stock(use),
            figure_cell(use.reels),
            figure_cell(use.least),
            Cell(each, mark=too_long),
            figure_cell(use.left, lacking=""),
        )
    )


def _stock(use: ReelUse) -> Cell:
    return Cell("", mark="no cable") if use.cable is None else Cell(use.cable)
