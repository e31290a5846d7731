"""What each cable takes -> the table of metres with waste and spare ends, and how that comes off the reels."""

from __future__ import annotations

from rigc.analysis.cables.cut_batches import with_waste_cm
from rigc.analysis.cables.reel_use import ReelUse
from rigc.diagnostics.figures import metres_cut, metres_with_waste, millimetres
from rigc.facts.bench import REEL_MM, SPARE_ENDS
from rigc.facts.leads import WASTE_SHARE
from rigc.reports.content import Cell, Column, Row, Table

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


def cut_totals(uses: tuple[ReelUse, ...]) -> Table:
    """Metres of each stock: as cut, with the usual waste rounded up to a centimetre, and with the spare ends."""
    rows = []
    for use in uses:
        texts = (
            str(len(use.cuts)),
            metres_cut(use.cut),
            metres_with_waste(with_waste_cm(use.cut)),
            millimetres(use.spare_ends),
        )
        cells = (_stock(use), *(Cell(text) for text in texts), Cell(metres_with_waste(use.taken_cm), strong=True))
        rows.append(Row(cells))
    return Table("cut-totals", "Cable to cut from", _TOTALS, tuple(rows), empty="nothing to cut")


def reel_table(uses: tuple[ReelUse, ...]) -> Table | None:
    """The reels each stock takes if they are full, and whether fewer would do; None if nothing is cut."""
    caption = f"Reel use, from full reels, {_WASTE} waste and the spare ends set aside on each"
    return Table("reels", caption, _REELS, tuple(map(_reels, uses))) if uses else None


def _reels(use: ReelUse) -> Row:
    plan = use.plan
    each = "; ".join(f"{len(raw)} piece{'s' if len(raw) != 1 else ''}, {metres_cut(sum(raw))} m" for raw in plan.raws)
    too_long = f"too long for a reel: {', '.join(map(millimetres, plan.too_long))} mm" if plan.too_long else ""
    left = "" if use.left_cm is None else metres_with_waste(use.left_cm)
    return Row((_stock(use), Cell(str(len(plan.raws))), Cell(str(plan.least)), Cell(each, mark=too_long), Cell(left)))


def _stock(use: ReelUse) -> Cell:
    return Cell("", mark="no cable") if use.cable is None else Cell(use.cable)
