"""PowerAssignment -> the power one-line: mains, supplies, outlets, leads, units, on as many drawings as pages are needed."""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.mains_loads import MainsLoads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.supply_totals import SupplyTotal, SupplyTotals
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawing.lettering import text_width
from rigc.reports.power.outlet_rows import OutletRow, outlet_rows
from rigc.reports.power.outlet_shapes import ROW, outlet_shapes
from rigc.reports.shapes import LETTERS, THICK, Box, Label, Line, Shape

WIDTH = 178.0
_MOST_ROWS = 17  # of a landscape page
_TOP, _GAP, _FOOT = 12.0, 8.0, 8.0
_MAINS_X, _SUPPLY_X, _OUTLET_X = 6.0, 14.0, 58.0
_LEAST = 5  # rows of a supply's box, for its own lines of text


def one_lines(
    rig: Rig, power: PowerAssignment, totals: SupplyTotals, mains: MainsLoads, leads: Leads
) -> tuple[Drawing, ...]:
    """Supplies are kept whole: a page holds as many as fit, in order of declaration."""
    pages: list[list[tuple[SupplyTotal, tuple[OutletRow, ...]]]] = []
    for total in totals.all:
        rows = outlet_rows(rig, power, leads, total.supply)
        if not pages or _height(pages[-1]) + len(rows) > _MOST_ROWS:
            pages.append([])
        pages[-1].append((total, rows))
    return tuple(_drawing(page, number, len(pages), mains) for number, page in enumerate(pages, 1))


def _height(page: list[tuple[SupplyTotal, tuple[OutletRow, ...]]]) -> int:
    return sum(max(_LEAST, len(rows)) for _, rows in page)


def _drawing(
    page: list[tuple[SupplyTotal, tuple[OutletRow, ...]]], number: int, count: int, mains: MainsLoads
) -> Drawing:
    shapes: list[Shape] = [Label(_MAINS_X - 4, 7, "mains", strong=True)]
    y = _TOP
    last = y
    for total, rows in page:
        height = max(_LEAST, len(rows)) * ROW
        last = y + min(height, _LEAST * ROW) / 2
        shapes += _supply(total, mains, y, height, last)
        shapes += outlet_shapes(rows, _OUTLET_X, y, WIDTH)
        y += height + _GAP
    shapes.append(Line(_MAINS_X, 9, _MAINS_X, last, pattern="dash-dot", width_mm=THICK))
    shapes.append(
        Label(
            2, y - _GAP + 6, "solid: DC · dashed: AC · dash-dot: mains · dotted: nothing plugged in · bar: one common"
        )
    )
    part = f" ({number} of {count})" if count > 1 else ""
    return Drawing(
        "one-line" if count == 1 else f"one-line-{number}",
        f"Power one-line{part}",
        _described(page),
        WIDTH,
        y - _GAP + _FOOT,
        tuple(shapes),
        caption="No wiring diagram: mains leads, inlets and earths are made by a competent person to the local code.",
    )


def _supply(total: SupplyTotal, mains: MainsLoads, y: float, height: float, feed: float) -> list[Shape]:
    load = mains.all[total.supply]
    given = f"{total.taken:.3f}".rstrip("0").rstrip(".")
    takes = "?" if load.volt_amperes is None else f"{load.volt_amperes:.2f}"
    most = "?" if total.ceiling is None else f"{total.ceiling:g}"
    lines = (f"gives {given} {total.unit}", f"of {most} {total.unit}", f"takes {takes} VA")
    width = _OUTLET_X - _SUPPLY_X
    return [
        Line(_MAINS_X, feed, _SUPPLY_X, feed, pattern="dash-dot", width_mm=THICK),
        Box(_SUPPLY_X, y, width, height, width_mm=THICK),
        Label(_SUPPLY_X + 2, y + 6, _cut(total.supply, width - 4), strong=True),
        *(Label(_SUPPLY_X + 2, y + 12 + 5.5 * at, _cut(text, width - 4)) for at, text in enumerate(lines)),
    ]


def _cut(text: str, width: float) -> str:
    """The text, shortened with an ellipsis where it is wider than that."""
    if text_width(text, LETTERS, strong=True) <= width:
        return text
    while text and text_width(text + "…", LETTERS, strong=True) > width:
        text = text[:-1]
    return text + "…"


def _described(page: list[tuple[SupplyTotal, tuple[OutletRow, ...]]]) -> str:
    """In words: every outlet and what it feeds."""
    parts = []
    for total, rows in page:
        fed = [f"{row.outlet} ({row.setting}) {row.end}" for row in rows if row.outlet]
        parts.append(f"{total.supply}: {', '.join(fed)}")
    return "; ".join(parts)
