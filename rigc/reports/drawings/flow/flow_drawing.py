"""Chains -> the signal-flow drawing: one unbroken way from left to right and from row to row, the outputs at the right edge."""

from __future__ import annotations

from rigc.analysis.signal.signal_steps import SignalSteps
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.flow.blocks import way
from rigc.reports.drawings.flow.nodes import Hop
from rigc.reports.drawings.flow.rows import LEFT, MIDDLE, RIGHT, Row, rows
from rigc.reports.drawings.flow.strands import strands
from rigc.reports.drawings.shapes import THIN, Box, Label, Polyline, Shape, Symbol

WIDTH, PAGE = 257.0, 147.0
"""Width of a drawing, and the most that is as high as a page, in mm."""

_STEPS = "A number in a cell is the step of the wiring sheet, a number at a line that of the lead."
_TOP, _BACK = 9.0, 6.0  # of the first row; what a row that goes on leaves under itself for the way back to the left
_TURN = 4.0  # the way from row to row runs this far outside the rows


class _Placed(Record):
    """A row, whether the row before it goes on in it, and the row in which it goes on."""

    row: Row
    joined: bool
    next: Row | None


def flow_drawings(rig: Rig, steps: SignalSteps) -> tuple[Drawing, ...]:
    """As many drawings as the chains need; a way that does not end in one goes on in the next."""
    all_ = tuple(row for strand in strands(steps.chains) for row in rows(rig, strand))
    pages: list[list[_Placed]] = [[]]
    for at, row in enumerate(all_):
        if pages[-1] and _TOP + sum(_height(each.row) for each in pages[-1]) + _height(row) > PAGE:
            pages.append([])
        joined = at > 0 and all_[at - 1].leaves is not None
        pages[-1].append(_Placed(row, joined, all_[at + 1] if row.leaves is not None else None))
    several = len(pages) > 1
    return tuple(_page(page, at if several else 0) for at, page in enumerate(pages, 1) if page)


def _height(row: Row) -> float:
    return row.height + (_BACK if row.leaves is not None else 0.0)


def _page(page: list[_Placed], number: int) -> Drawing:
    shapes: list[Shape] = []
    y = _TOP
    for at, placed in enumerate(page):
        row = placed.row
        shapes.append(Symbol("", row.shapes, 0, y))
        if placed.joined and not at and row.hop is not None:
            shapes += way(row.hop, ((LEFT - _TURN, y + MIDDLE), (row.entry, y + MIDDLE)))
            shapes.append(Label(LEFT - _TURN, y + MIDDLE - 6.4, f"from part {number - 1}"))
        if row.leaves is not None and placed.next is not None:
            on = None if at + 1 < len(page) else number + 1
            shapes += _goes_on(row.leaves, y, _height(row), placed.next, on)
        y += _height(row)
    told = (Label(LEFT - _TURN - 1, 4 + 4 * at, words) for at, words in enumerate((_read(shapes), _STEPS)))
    things = ", ".join(thing for placed in page for thing in placed.row.things)
    return Drawing(
        name=f"flow-{number}" if number else "flow",
        title=f"Signal flow, part {number}" if number else "Signal flow",
        desc=f"Blocks in the order of the signal, left to right: {things}.",
        width_mm=WIDTH,
        height_mm=round(y + 2, 1),
        shapes=(*told, *shapes),
    )


def _read(shapes: list[Shape]) -> str:
    """How to read the lines that are drawn."""
    parts = [part for shape in shapes for part in (shape.shapes if isinstance(shape, Symbol) else (shape,))]
    lines = {(part.pattern, part.width_mm) for part in parts if isinstance(part, Polyline)}
    boxes = {part.pattern for part in parts if isinstance(part, Box)}
    patterns = {pattern for pattern, _ in lines}
    dashed = {"inside a thing": "dashed" in patterns, "drawn elsewhere too": "dashed" in boxes}
    there = {
        "two lines: stereo": any(width == THIN for _, width in lines),
        "dotted: wireless": "dotted" in patterns,
        f"dashed: {', or '.join(words for words, drawn in dashed.items() if drawn)}": any(dashed.values()),
    }
    told = "; ".join(words for words, drawn in there.items() if drawn)
    return f"Signal runs from left to right{'; ' if told else ''}{told}."


def _goes_on(x: float, y: float, height: float, below: Row, on: int | None) -> tuple[Shape, ...]:
    """The way from the end of a row to the first node of the next; to the edge, where that is on another drawing."""
    middle = y + MIDDLE
    hop = below.hop or Hop((), stereo=False)
    if on is not None:
        told = Label(RIGHT + _TURN, middle + 6.4, f"to part {on}", anchor="end", level="top")
        return (*way(hop, ((x, middle), (RIGHT + _TURN, middle))), told)
    right, left, back, next_ = RIGHT + _TURN, LEFT - _TURN, y + height - 1, y + height + MIDDLE
    return way(
        hop,
        ((x, middle), (right, middle), (right, back), (left, back), (left, next_), (below.entry, next_)),
    )
