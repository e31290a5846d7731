"""Rows of the power one-line -> shapes: outlets at the left, leads with their numbers, what joins or turns them, units at the right.

A Y lead is one line that forks at a dot; leads in series or parallel meet in the box of their adaptor, from which one line
goes to the unit; a lead that turns + and − passes through a box with crossed conductors.
"""

from __future__ import annotations

from rigc.record import Record
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.power.broken import broken
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, THIN, Box, Circle, Label, Line, Polyline, Shape
from rigc.reports.power.outlet_rows import OutletRow

ROW = 7.5
_BOX, _OUTLET = 6.0, 12.0
_TOLD = 3.5  # between an outlet and what is told over its lead
_CROSS = 8.0  # width of the crossed conductors
_FORK = 6.0  # how far left of the adaptors a Y lead forks
_RAISED = 0.25  # two lines of words in a box: letters hang lower than they rise
_COMMON = 1.5  # how far left of its outlets a bar of a common runs


class Columns(Record):
    """Where the boxes of adaptors begin and where those of units do, in mm from the edge of the drawing."""

    join: float
    unit: float


def columns(rows: tuple[OutletRow, ...], x: float) -> Columns:
    """As narrow as the words over these leads and in their adaptors allow, from outlets at `x`."""
    told = max(text_width(f"{row.setting}, {row.load}", LETTERS) for row in rows)
    mark = max(text_width(word, LETTERS, strong=True) for row in rows for word in (row.mark, row.trunk))
    leg = max(text_width(row.mark, LETTERS, strong=True) if row.trunk or not row.outlet else 0.0 for row in rows)
    boxes = max(_pair_width(row) if row.joined else _in_line_width(row) for row in rows)
    join = x + _OUTLET + _TOLD + told + mark + 2 * _FORK
    return Columns(join, join + max(boxes, 8.0) + leg + 8.0)


def outlet_shapes(
    supply: str, rows: tuple[OutletRow, ...], x: float, y: float, right: float, to: Columns
) -> list[Shape]:
    """The rows of a supply from (x, y) down; no unit reaches beyond `right`."""
    shapes: list[Shape] = []
    first = 0.0
    for at, row in enumerate(rows):
        middle = _middle(y, at)
        if row.outlet:
            first = middle
            shapes += _outlet(row, x, middle)
        if not row.used:
            shapes += _spare(row, x, middle, to.unit)
            continue
        before = rows[at - 1] if at else None
        paired = bool(row.joined) and before is not None and before.end == row.end and before.joined == row.joined
        shapes += _lead(row, x, middle, first, to)
        if not row.joined:
            shapes += _unit(row.end, to.unit, middle, right)
        elif not paired:
            together = _together(rows, at)
            shapes += _pair(supply, row, together, to, middle, right)
    return [*shapes, *_commons(rows, x, y)]


def _middle(y: float, at: float) -> float:
    return y + ROW * at + ROW / 2


def _together(rows: tuple[OutletRow, ...], at: int) -> int:
    """How many rows from `at` on belong to the same pair."""
    count = 1
    while (
        at + count < len(rows) and rows[at + count].joined == rows[at].joined and rows[at + count].end == rows[at].end
    ):
        count += 1
    return count


def _outlet(row: OutletRow, x: float, middle: float) -> list[Shape]:
    return [
        Box(x, middle - _BOX / 2, _OUTLET, _BOX),
        Label(x + _OUTLET / 2, middle, row.outlet, anchor="middle", level="middle"),
        Label(x + _OUTLET + _TOLD, middle - 1, f"{row.setting}, {row.load}"),
    ]


def _spare(row: OutletRow, x: float, middle: float, end: float) -> list[Shape]:
    return [
        Line(x + _OUTLET, middle, end, middle, pattern="dotted"),
        Label(end + 1.5, middle, row.end, level="middle"),
    ]


def _lead(row: OutletRow, x: float, middle: float, first: float, to: Columns) -> list[Shape]:
    """From the outlet, or from the fork of its Y lead, to the unit, or to the box of its pair."""
    meets = bool(row.joined)
    pattern = "dashed" if row.ac else "solid"
    start, fork = x + _OUTLET, to.join - _FORK
    end = to.join if meets else to.unit
    forked = first != middle or row.trunk
    points = ((start, middle), (end, middle)) if first == middle else ((fork, first), (fork, middle), (end, middle))
    shapes: list[Shape] = [Polyline(points, pattern=pattern, width_mm=THICK)]
    if first == middle and row.trunk:
        shapes.append(Label(fork - 2, middle - 1, row.trunk, anchor="end", strong=True))
    if first != middle:
        shapes.append(Circle(fork, first, 0.9, fill="solid"))
    boxed = _in_line(row, to.join, middle) if row.adaptors and not meets else []
    if forked and boxed:
        at, anchor = to.unit - 2, "end"
    elif forked:
        at, anchor = fork + 2, "start"
    else:
        at, anchor = fork + 4, "end"
    return [*shapes, Label(at, middle - 1, row.mark, anchor=anchor, strong=True), *boxed]


def _in_line(row: OutletRow, x: float, middle: float) -> list[Shape]:
    """A box on the lead: what it passes through, and crossed conductors where these turn + and −."""
    told = ", ".join(row.adaptors)
    crossed = _CROSS if row.turned else 0.0
    width = _in_line_width(row)
    shapes: list[Shape] = [
        Box(x, middle - _BOX / 2, width, _BOX, fill="white"),
        Label(x + crossed + 1.5, middle, told, level="middle"),
    ]
    if row.turned:
        for side in (-1, 1):
            points = (
                (x, middle - 1.5 * side),
                (x + 2.5, middle - 1.5 * side),
                (x + crossed - 2.5, middle + 1.5 * side),
                (x + crossed, middle + 1.5 * side),
            )
            shapes.append(Polyline(points, width_mm=THIN))
        shapes.append(Line(x + crossed, middle - _BOX / 2, x + crossed, middle + _BOX / 2, "grey", width_mm=HAIR))
    return shapes


def _pair(supply: str, row: OutletRow, count: int, to: Columns, middle: float, right: float) -> list[Shape]:
    """The box where the leads of a pair meet, and its unit; outlets that stand elsewhere are named in place of the unit's line."""
    left = to.join
    foot = middle + ROW * (count - 1)
    centre = (middle + foot) / 2
    named = [port for port in row.joined if port.thing != supply or count < len(row.joined)]
    told = [", ".join(row.pair)] if count == 1 else list(row.pair)
    width = _pair_width(row)
    shapes: list[Shape] = [
        Box(left, middle - _BOX / 2, width, foot - middle + _BOX, fill="white"),
        *(
            Label(left + width / 2, centre + 4.0 * (at - (len(told) - 1) / 2), text, anchor="middle", level="middle")
            for at, text in enumerate(told)
        ),
        Line(left + width, centre, to.unit, centre, width_mm=THICK, pattern="dashed" if row.ac else "solid"),
    ]
    own = all(port.thing == supply for port in named)
    others = f" ({' and '.join(port.jack if own else str(port) for port in named)})" if named else ""
    return [*shapes, *_unit(f"{row.end}{others}", to.unit, centre, right)]


def _in_line_width(row: OutletRow) -> float:
    return (_CROSS if row.turned else 0.0) + text_width(", ".join(row.adaptors), LETTERS) + 3


def _pair_width(row: OutletRow) -> float:
    return text_width(", ".join(row.pair), LETTERS) + 3


def _unit(name: str, x: float, middle: float, right: float) -> list[Shape]:
    """A box as wide as its words; words too long for the page stand in two lines."""
    lines = broken(name, right - x - 4)
    width = max(16.0, *(text_width(line, LETTERS) + 4 for line in lines))
    height, raised = (_BOX, 0.0) if len(lines) == 1 else (ROW - 0.3, _RAISED)
    return [
        Box(x, middle - height / 2, width, height, corner_mm=1),
        *(
            Label(x + 2, middle - raised + 3.2 * (at - (len(lines) - 1) / 2), line, level="middle")
            for at, line in enumerate(lines)
        ),
    ]


def _commons(rows: tuple[OutletRow, ...], x: float, y: float) -> list[Shape]:
    """A bar for each common, along its outlets' left edges."""
    shapes: list[Shape] = []
    for common in dict.fromkeys(row.common for row in rows if row.common):
        at = [_middle(y, number) for number, row in enumerate(rows) if row.common == common and row.outlet]
        if len(at) > 1:
            shapes.append(Line(x - _COMMON, at[0], x - _COMMON, at[-1], width_mm=THICK))
            shapes += [Line(x - _COMMON, each, x, each, width_mm=THICK) for each in at]
    return shapes
