"""Chains -> the signal-flow drawing: each chain from left to right, its loops framed below the thing that holds them."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.signal_steps import ChainSteps, SignalSteps
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.flow.blocks import HEIGHT, arrow, box, box_width, box_words, hop_width
from rigc.reports.drawings.flow.nodes import Node, Side, nodes
from rigc.reports.drawings.means.label_box import label_box
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, Box, Label, Line, Polyline, Shape, Symbol

LEFT, RIGHT, PAGE, BREAK = 4.0, 253.0, 144.0, 9.0
"""Margins and height of a page of the drawing, in mm; what a row that goes on leaves for its arrow."""

_ROW, _SIDE_ROW, _BAND, _BESIDE = 18.0, 14.0, 9.0, 10.0


class Part(Record):
    """Shapes of a row of a chain, from its upper edge at 0 on, their height, and how far they reach to the right.

    A `whole` chain in one plain row may have another beside it.
    """

    shapes: tuple[Shape, ...]
    height: float
    right: float
    things: tuple[str, ...]
    whole: bool


def flow_drawings(rig: Rig, steps: SignalSteps) -> tuple[Drawing, ...]:
    """As many drawings as the chains need; a row that does not fit goes on in the next."""
    pages: list[list[Part]] = [[]]
    for part in _compact([part for at, chain in enumerate(steps.chains, 1) for part in _chain(rig, chain, at)]):
        if pages[-1] and sum(each.height for each in pages[-1]) + part.height > PAGE - _BAND:
            pages.append([])
        pages[-1].append(part)
    several = len(pages) > 1
    return tuple(_page(parts, at if several else 0) for at, parts in enumerate(pages, 1) if parts)


def _compact(parts: list[Part]) -> list[Part]:
    """Short chains stand side by side where they fit."""
    found: list[Part] = []
    for part in parts:
        last = found[-1] if found else None
        if last is None or not (last.whole and part.whole) or last.right + _BESIDE + part.right - LEFT > RIGHT:
            found.append(part)
            continue
        aside = last.right + _BESIDE - LEFT
        shapes = (*last.shapes, Symbol("", part.shapes, aside, 0))
        found[-1] = Part(
            shapes, max(last.height, part.height), part.right + aside, (*last.things, *part.things), whole=True
        )
    return found


def _page(parts: list[Part], number: int) -> Drawing:
    shapes: list[Shape] = [
        Label(
            LEFT,
            5,
            "Signal runs from left to right; two lines: stereo; dotted: wireless; numbers are those of the leads.",
        )
    ]
    top = _BAND
    for part in parts:
        shapes.append(Symbol("", part.shapes, 0, top))
        top += part.height
    things = ", ".join(thing for part in parts for thing in part.things)
    return Drawing(
        name=f"flow-{number}" if number else "flow",
        title=f"Signal flow, part {number}" if number else "Signal flow",
        desc=f"Blocks in the order of the signal, left to right: {things}.",
        width_mm=RIGHT + LEFT,
        height_mm=round(top + 2, 1),
        shapes=tuple(shapes),
    )


def _chain(rig: Rig, chain: ChainSteps, number: int) -> list[Part]:
    """The rows of a chain: its heading over the first, an arrow from row to row."""
    rows = _rows(rig, nodes(chain))
    parts = []
    for at, row in enumerate(rows):
        heading = Label(LEFT, 4, _heading(chain, number) if not at else "goes on from above", strong=not at)
        shapes, height = _row(rig, row, 8.5, last=at == len(rows) - 1)
        right = max(label_box(heading).right, LEFT + sum(_node_width(rig, node) for node in row))
        whole = len(rows) == 1 and not any(node.sides for node in row)
        parts.append(Part((heading, *shapes), height, right, tuple(_things(row)), whole))
    return parts


def _things(row: list[Node]) -> Iterator[str]:
    """The things of a row in the order of the signal, those of loops after the one that holds them."""
    for node in row:
        yield node.thing
        yield from (thing for side in node.sides for _, thing in side.stops)


def _node_width(rig: Rig, node: Node) -> float:
    return box_width(box_words(rig, node.thing)) + (hop_width(node.hop) if node.hop is not None else 0.0)


def _heading(chain: ChainSteps, number: int) -> str:
    when = [*chain.when.scenarios, *([f"with {chain.when.instrument}"] if chain.when.instrument else [])]
    first = chain.steps[0] if chain.steps else None
    start = f", from {first.thing}.{first.outs[0]}" if first is not None and len(first.outs) == 1 and number > 1 else ""
    return f"Chain {chain.name or number}{start}{': ' if when else ''}{', '.join(when)}"


def _rows(rig: Rig, chain: tuple[Node, ...]) -> list[list[Node]]:
    rows: list[list[Node]] = [[]]
    x = LEFT
    for node in chain:
        wide = _node_width(rig, node)
        if rows[-1] and x + wide > RIGHT - BREAK:
            rows.append([])
            x = LEFT
        rows[-1].append(node)
        x += wide
    return rows


def _row(rig: Rig, row: list[Node], top: float, last: bool) -> tuple[list[Shape], float]:
    shapes: list[Shape] = []
    x, height = LEFT, top + _ROW - 6
    for node in row:
        words = box_words(rig, node.thing)
        if node.hop is not None:
            shapes += arrow(node.hop, x, top + HEIGHT / 2)
            x += hop_width(node.hop)
        shapes += box(words, x, top)
        middle = x + box_width(words) / 2
        x += box_width(words)
        if node.sides:
            framed, bottom = _sides(rig, node, middle, height + 4)
            shapes += framed
            height = bottom
    if not last:
        shapes.append(Line(x, top + HEIGHT / 2, x + BREAK - 2, top + HEIGHT / 2, pattern="dashed", arrow="end"))
    return shapes, height + 3


def _sides(rig: Rig, node: Node, middle: float, top: float) -> tuple[list[Shape], float]:
    """A frame across the page with a cell for each loop, joined to its node by a line."""
    wide = max(_side_width(rig, side) for side in node.sides)
    columns = max(1, int((RIGHT - LEFT - 4) // (wide + 4)))
    shapes: list[Shape] = []
    for at, side in enumerate(node.sides):
        column, row = at % columns, at // columns
        shapes += _side(rig, side, LEFT + 3 + column * (wide + 4), top + 8.5 + row * (_SIDE_ROW + 3))
    rows = -(-len(node.sides) // columns)
    bottom = top + 6 + rows * (_SIDE_ROW + 3)
    right = LEFT + 3 + min(columns, len(node.sides)) * (wide + 4)
    frame = Box(LEFT, top, max(right - LEFT, middle - LEFT + 4), bottom - top, pattern="dashed")
    named = Label(LEFT + 3, top + 4, f"inside {node.thing}: from it and back to it")
    join = Polyline(((middle, top - 4 - 2), (middle, top)), pattern="dashed")
    return [frame, named, join, *shapes], bottom


def _side_width(rig: Rig, side: Side) -> float:
    stops = sum(hop_width(hop) + box_width(box_words(rig, thing)) for hop, thing in side.stops)
    return text_width(side.name, LETTERS) + 2 + stops + hop_width(side.back)


def _side(rig: Rig, side: Side, x: float, y: float) -> list[Shape]:
    middle = y + HEIGHT / 2
    shapes: list[Shape] = [Label(x, middle, side.name, level="middle")]
    x += text_width(side.name, LETTERS) + 2
    for hop, thing in side.stops:
        shapes += arrow(hop, x, middle)
        x += hop_width(hop)
        words = box_words(rig, thing)
        shapes += box(words, x, y)
        x += box_width(words)
    return [*shapes, *arrow(side.back, x, middle)]
