"""PowerAssignment -> the power one-line: mains, supplies, outlets, leads, units, on as many drawings as pages are needed."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.power.outlet_shapes import BESIDE, ROW, outlet_shapes
from rigc.reports.drawings.shapes import LETTERS, THICK, Box, Label, Line, Shape
from rigc.reports.power.outlet_rows import OutletRow, outlet_rows
from rigc.traced.figure import Lacking

WIDTH = 178.0
_PAGE = 150.0  # of a landscape page, its caption besides, in mm
_TOP, _GAP, _FOOT = 12.0, 8.0, 8.0
_MOST_ROWS = int((_PAGE - _TOP - _FOOT) // ROW)
_MAINS_X, _SUPPLY_X, _OUTLET_X = 6.0, 14.0, 58.0
_LEAST = 5  # rows of a supply's box, for its own lines of text


class Part(Record):
    """A supply, or as much of it as a page holds: `told` says in its box what lies on other pages."""

    total: SupplyTotal
    rows: tuple[OutletRow, ...]
    told: tuple[str, ...] = ()

    @property
    def height(self) -> float:
        """Of its box, in mm."""
        return max(_LEAST, len(self.rows)) * ROW


def one_lines(
    rig: Rig, power: PowerAssignment, totals: SupplyTotals, mains: MainsLoads, leads: Leads
) -> tuple[Drawing, ...]:
    """A page holds as many supplies as fit, in order of declaration; one that no page holds whole goes on on the next."""
    pages: list[list[Part]] = []
    for total in totals.all:
        for part in _parts(total, outlet_rows(rig, power, leads, total.supply)):
            if not pages or _height([*pages[-1], part]) > _PAGE:
                pages.append([])
            pages[-1].append(part)
    return tuple(_drawing(page, number, len(pages), mains) for number, page in enumerate(pages, 1))


def _height(page: list[Part]) -> float:
    return _TOP + sum(part.height + _GAP for part in page) - _GAP + _FOOT


def _parts(total: SupplyTotal, rows: tuple[OutletRow, ...]) -> list[Part]:
    """Cut where an outlet begins, as far as a page reaches."""
    if len(rows) <= _MOST_ROWS:
        return [Part(total, rows)]
    parts, left = [], rows
    while left:
        cut = min(_MOST_ROWS, len(left))
        if cut < len(left):
            cut = next((at for at in range(cut, 0, -1) if left[at].outlet), cut)
        parts.append(left[:cut])
        left = left[cut:]
    return [Part(total, part, _elsewhere(part, rows, at, len(parts))) for at, part in enumerate(parts, 1)]


def _elsewhere(part: tuple[OutletRow, ...], rows: tuple[OutletRow, ...], at: int, count: int) -> tuple[str, ...]:
    """Which part of a supply this is, and which commons other parts share."""
    beyond = {row.common for row in rows if row.common and row not in part}
    shared = [common for common in dict.fromkeys(row.common for row in part) if common in beyond]
    return (f"part {at} of {count}", *(f"goes on: {common}" for common in shared))


def _drawing(page: list[Part], number: int, count: int, mains: MainsLoads) -> Drawing:
    shapes: list[Shape] = [Label(_MAINS_X - 4, 7, "mains", strong=True)]
    y = _TOP
    last = y
    for part in page:
        last = y + _LEAST * ROW / 2
        shapes += _supply(part, mains, y, last)
        shapes += outlet_shapes(part.rows, _OUTLET_X, y, WIDTH)
        y += part.height + _GAP
    shapes.append(Line(_MAINS_X, 9, _MAINS_X, last, pattern="dash-dot", width_mm=THICK))
    shapes.append(
        Label(
            2, y - _GAP + 6, "solid: DC · dashed: AC · dash-dot: mains · dotted: nothing plugged in · bar: one common"
        )
    )
    told = f" ({number} of {count})" if count > 1 else ""
    return Drawing(
        "one-line" if count == 1 else f"one-line-{number}",
        f"Power one-line{told}",
        _described(page),
        WIDTH + (BESIDE if any(row.also for part in page for row in part.rows) else 0),
        y - _GAP + _FOOT,
        tuple(shapes),
        caption="No wiring diagram: mains leads, inlets and earths are made by a competent person to the local code.",
    )


def _supply(part: Part, mains: MainsLoads, y: float, feed: float) -> list[Shape]:
    total = part.total
    load = mains.all[total.supply]
    most = "?" if total.ceiling is None else total.most.text
    takes = "?" if isinstance(load.volt_amperes, Lacking) else load.volt_amperes.text
    lines = (f"gives {total.taken.text} {total.unit}", f"of {most} {total.unit}", f"takes {takes} VA", *part.told)
    width = _OUTLET_X - _SUPPLY_X
    return [
        Line(_MAINS_X, feed, _SUPPLY_X, feed, pattern="dash-dot", width_mm=THICK),
        Box(_SUPPLY_X, y, width, part.height, width_mm=THICK),
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


def _described(page: list[Part]) -> str:
    """In words: every outlet and what it feeds."""
    parts = []
    for part in page:
        fed = [f"{row.outlet} ({row.setting}) {row.end}" for row in part.rows if row.outlet]
        parts.append(f"{part.total.supply}: {', '.join(fed)}")
    return "; ".join(parts)
