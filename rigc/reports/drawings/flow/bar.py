"""A node with turns -> a bar on the way, and under it each turn closed: down to its units and back up to the bar, in order."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.drawings.flow.blocks import HEIGHT, SIDE, STEP, box, box_width, box_words, way
from rigc.reports.drawings.flow.nodes import Hop, Node, Turn
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, THICK, Box, Label, Line, Point, Shape

_DROP, _BETWEEN, _BACK, _APART = 9.0, 8.0, 3.5, 3.5
_TALL = 3  # a turn of more units goes down on the left and up on the right
_FALL = STEP / 2  # from a column's left edge to the line that falls into it
BAR = 12.0
"""Height of a bar, in mm: its name over the names of its turns."""


def bar_width(rig: Rig, node: Node, exits: int) -> float:
    """The width of the bar, with a place at its right for each branch that leaves it."""
    named = STEP + _named(rig, node) + 3
    return max(named, STEP + 2 + sum(_turn_width(rig, turn) + _APART for turn in node.turns)) + 6 * exits


def bar_height(node: Node) -> float:
    """From the bar's upper edge to the foot of its longest turn."""
    rows = max(max(len(column) for column in _columns(turn)) for turn in node.turns)
    return BAR + _DROP + rows * HEIGHT + (rows - 1) * _BETWEEN + 2


def bar(rig: Rig, node: Node, x: float, y: float, width: float) -> tuple[Shape, ...]:
    """The bar with its upper left corner at (x, y), and its turns."""
    name, told = box_words(rig, node.thing)
    shapes: list[Shape] = [
        Box(x, y, width, BAR, width_mm=THICK, fill="white", pattern="dashed" if node.again else "solid"),
        Line(x + STEP, y, x + STEP, y + BAR),
        Label(x + STEP / 2, y + BAR / 2, str(node.number), anchor="middle", level="middle"),
        Label(x + STEP + 1.5, y + 3.2, name, level="middle", strong=True),
        Label(x + STEP + 4 + text_width(name, LETTERS, strong=True), y + 3.2, told, level="middle"),
    ]
    left = x + STEP + 2
    for turn in node.turns:
        shapes += _turn(rig, turn, left, y + BAR)
        left += _turn_width(rig, turn) + _APART
    return tuple(shape for shape in shapes if not (isinstance(shape, Label) and not shape.text))


def split(rig: Rig, node: Node, first: float, room: float) -> tuple[Node, ...]:
    """The node as bars that fit into `room`; what joins them runs inside the thing.

    A bar that is too long for one row begins in the `first` room, what is left of a row, if two turns of it fit there.
    """
    if bar_width(rig, node, 0) <= room or bar_width(rig, node.replace(turns=node.turns[:2]), 0) > first:
        first = room
    parts: list[list[Turn]] = [[]]
    for turn in node.turns:
        here = room if len(parts) > 1 else first
        if parts[-1] and bar_width(rig, node.replace(turns=(*parts[-1], turn)), 0) > here:
            parts.append([])
        parts[-1].append(turn)
    inside = Hop((), stereo=False, inside=True)
    return tuple(
        node.replace(
            turns=tuple(part),
            hop=node.hop if not at else inside,
            caption=node.caption if not at else "",
            number=node.number if not at else parts[at - 1][-1].number,
        )
        for at, part in enumerate(parts)
    )


def _named(rig: Rig, node: Node) -> float:
    name, told = box_words(rig, node.thing)
    return text_width(name, LETTERS, strong=True) + text_width(told, LETTERS) + 4


def _columns(turn: Turn) -> tuple[tuple[tuple[Hop, str, int], ...], ...]:
    """The units going down, and for a long turn those that come up again, from the bar downwards."""
    if len(turn.stops) <= _TALL:
        return (turn.stops,)
    half = -(-len(turn.stops) // 2)
    return turn.stops[:half], turn.stops[half:]


def _column_widths(rig: Rig, turn: Turn) -> list[float]:
    return [max(box_width(box_words(rig, thing)) for _, thing, _ in column) for column in _columns(turn)]


def _turn_width(rig: Rig, turn: Turn) -> float:
    """Room for its units, for its numbers beside both lines, and for its name with the step of its end in the bar."""
    columns = _columns(turn)
    across = _APART + _marks_width(columns[1][0][0]) if len(columns) > 1 else 0.0
    units = sum(_column_widths(rig, turn)) + across + _BACK
    numbers = _FALL + 3 * SIDE + _marks_width(turn.stops[0][0]) + 3 + _marks_width(turn.back)
    named = text_width(turn.name, LETTERS) + 2 + STEP
    return max(units, numbers + 3 * SIDE, named + SIDE)


def _marks_width(hop: Hop) -> float:
    return max([text_width(mark, LETTERS) for mark in hop.leads] or [0.0])


def _turn(rig: Rig, turn: Turn, x: float, y: float) -> list[Shape]:
    """A turn under the bar's lower edge at `y`, from `x` to the right."""
    width = _turn_width(rig, turn)
    up = x + width - SIDE - 0.5
    cell = text_width(str(turn.number), LETTERS) + 2
    shapes: list[Shape] = [
        Label(x + 0.5, y - 3, turn.name, level="middle"),
        Box(up - cell / 2, y - 5.2, cell, 4.4, fill="white"),
        Label(up, y - 3, str(turn.number), anchor="middle", level="middle"),
    ]
    columns = _columns(turn)
    first = y + _DROP
    fall = x + _FALL
    before: Point = (fall, y)
    for at, (hop, thing, number) in enumerate(columns[0]):
        top = first + at * (HEIGHT + _BETWEEN)
        shapes += box(box_words(rig, thing), number, x, top)
        shapes += way(hop, (before, (fall, top)))
        shapes += _numbers(hop, fall, top - 2.0 if at else y + _DROP - 2.5, "start")
        before = (fall, top + HEIGHT)
    last = x + box_width(box_words(rig, columns[0][-1][1]))
    foot = first + (len(columns[0]) - 1) * (HEIGHT + _BETWEEN) + HEIGHT / 2
    if len(columns) > 1:
        side = x + _column_widths(rig, turn)[0] + _APART + _marks_width(columns[1][0][0])
        for at, (hop, thing, number) in enumerate(columns[1]):
            top = foot - HEIGHT / 2 - at * (HEIGHT + _BETWEEN)
            shapes += box(box_words(rig, thing), number, side, top)
            start: tuple[Point, ...] = (
                ((last, foot), (side, foot))
                if not at
                else ((side + _FALL, top + HEIGHT + _BETWEEN), (side + _FALL, top + HEIGHT))
            )
            shapes += way(hop, start)
            shapes += (
                _numbers(hop, side + _FALL, top + HEIGHT + _BETWEEN - 2, "start")
                if at
                else [Label(side - 1.5, foot - 2.5, ", ".join(hop.leads), anchor="end")] * bool(hop.leads)
            )
            last = side + box_width(box_words(rig, thing))
        foot -= (len(columns[1]) - 1) * (HEIGHT + _BETWEEN)
    shapes += way(turn.back, ((last, foot), (up, foot), (up, y)))
    shapes += _numbers(turn.back, up, y + _DROP - 2.5, "end")
    return shapes


def _numbers(hop: Hop, x: float, y: float, anchor: str) -> list[Shape]:
    """The numbers of a hop beside its upright line: to the right (`start`) or left (`end`); those of a pair over each other."""
    off = (SIDE if hop.stereo else 0.0) + 1.2
    at = x + off if anchor == "start" else x - off
    return [Label(at, y - 3.3 * up, mark, anchor=anchor) for up, mark in enumerate(reversed(hop.leads))]
