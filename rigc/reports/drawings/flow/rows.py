"""A strand -> rows from left to right: its nodes, and under them the branches that leave it, each in a lane of its own."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.drawings.flow.bar import BAR, bar, bar_height, bar_width, split
from rigc.reports.drawings.flow.blocks import HEIGHT, SIDE, box, box_width, box_words, hop_width, marks, way
from rigc.reports.drawings.flow.nodes import Hop, Node
from rigc.reports.drawings.flow.strands import Strand
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, Label, Shape, Symbol

LEFT, RIGHT = 10.0, 249.0
"""Where rows begin and end, in mm: the outputs stand with their right edges at the latter."""
MIDDLE = 12.0
"""How far below a row's upper edge its way runs, in mm."""

_EXIT, _UP = 5.0, 0.5  # between branches of one thing; how far a lane's upper edge lies within the row above it


class Row(Record):
    """Shapes of a row, from its upper edge at 0 on, and their height.

    The way comes in by `hop` up to `entry` and leaves at `leaves`; a row where the way ends has None there.
    """

    shapes: tuple[Shape, ...]
    height: float
    things: tuple[str, ...]
    hop: Hop | None
    entry: float
    leaves: float | None


def rows(rig: Rig, strand: Strand) -> tuple[Row, ...]:
    """The rows of a strand from the left edge; branches that no row has room for follow as strands of their own."""
    kept = tuple(each for each in strand.branches if _fits(rig, strand.nodes[each[0]], each[1]))
    others = tuple(each for each in strand.branches if each not in kept)
    found: list[Row] = []
    for part, last in _filled(rig, Strand(strand.nodes, kept)):
        found.append(_row(rig, part, LEFT, last, lane=False))
    for at, branch in others:
        start = strand.nodes[at].replace(hop=None, turns=(), caption="", again=True)
        moved = tuple((place + 1, further) for place, further in branch.branches)
        found += rows(rig, Strand((start, *branch.nodes), moved))
    return tuple(found)


def _fits(rig: Rig, node: Node, branch: Strand) -> bool:
    start = LEFT + (hop_width(node.hop) if node.hop is not None else 0.0) + _width(rig, node, 3)
    return start + _reach(rig, branch) <= RIGHT


def _width(rig: Rig, node: Node, exits: int) -> float:
    return bar_width(rig, node, exits) if node.turns else box_width(box_words(rig, node.thing))


def _step(rig: Rig, node: Node, exits: int) -> float:
    """What a node takes of a row with the hop into it."""
    return (hop_width(node.hop) if node.hop is not None else 0.0) + max(
        _width(rig, node, exits), text_width(node.caption, LETTERS) + 2 - (hop_width(node.hop) if node.hop else 0.0)
    )


def _reach(rig: Rig, strand: Strand) -> float:
    """How far a strand reaches to the right of where it begins, its branches with it."""
    x, most = 0.0, 0.0
    for at, node in enumerate(strand.nodes):
        leaving = [branch for place, branch in strand.branches if place == at]
        x += _step(rig, node, len(leaving))
        most = max([most, x, *(x + _reach(rig, branch) for branch in leaving)])
    return most


def _filled(rig: Rig, strand: Strand) -> list[tuple[Strand, bool]]:
    """The strand cut into rows, and whether a row is its last; a node with branches stands where these have room."""
    cut: list[tuple[list[Node], list[tuple[int, Strand]]]] = [([], [])]
    x = LEFT
    for at, whole in enumerate(strand.nodes):
        leaving = [branch for place, branch in strand.branches if place == at]
        taken = (hop_width(whole.hop) if whole.hop is not None else 0.0) + 6 * len(leaving)
        parts = split(rig, whole, RIGHT - x - taken, RIGHT - LEFT - taken) if whole.turns else (whole,)
        for node in parts:
            exits = leaving if node is parts[-1] else []
            wide = _step(rig, node, len(exits))
            far = max([wide, *(wide + _reach(rig, branch) for branch in exits)])
            if cut[-1][0] and x + far > RIGHT:
                cut.append(([], []))
                x = LEFT
            cut[-1][0].append(node)
            cut[-1][1].extend((len(cut[-1][0]) - 1, branch) for branch in exits)
            x += wide
    return [(Strand(tuple(found), tuple(branches)), row == len(cut) - 1) for row, (found, branches) in enumerate(cut)]


def _row(rig: Rig, strand: Strand, x: float, last: bool, lane: bool) -> Row:
    """A row from `x` on. The line of its first hop is drawn by whoever knows where it comes from."""
    shapes: list[Shape] = []
    feet: list[float] = []
    exits: list[tuple[int, float, float, Strand]] = []
    entry = x
    for at, node in enumerate(strand.nodes):
        leaving = [branch for place, branch in strand.branches if place == at]
        width = _width(rig, node, len(leaving))
        begins = x
        if node.hop is not None:
            x += hop_width(node.hop)
            if last and at == len(strand.nodes) - 1 and not leaving:
                x = max(x, RIGHT - width)
            if at:
                shapes += way(node.hop, ((begins, MIDDLE), (x, MIDDLE)))
        shapes += _written(node, begins, x, from_afar=not at and not lane)
        if not at:
            entry = x
        foot = MIDDLE + (BAR if node.turns else HEIGHT) / 2
        if node.turns:
            shapes += bar(rig, node, x, MIDDLE - BAR / 2, width)
            feet.append(MIDDLE - BAR / 2 + bar_height(node))
        else:
            shapes += box(box_words(rig, node.thing), node.number, x, MIDDLE - HEIGHT / 2, node.again)
            feet.append(foot)
        x += width
        apart = min(_EXIT, (width - 4) / max(1, len(leaving)))
        exits += [(at, x - 3 - apart * (len(leaving) - 1 - back), foot, branch) for back, branch in enumerate(leaving)]
    things = [
        thing
        for node in strand.nodes
        for thing in (node.thing, *(stop[1] for turn in node.turns for stop in turn.stops))
    ]
    under = 0.0
    for at, drop, foot, branch in reversed(exits):
        under = max(under, *feet[at:])
        below = _row(rig, branch, drop, last=True, lane=True)
        shapes.append(Symbol("", below.shapes, 0, under - _UP))
        if below.hop is not None:
            middle = under - _UP + MIDDLE
            shapes += way(below.hop, ((drop, foot), (drop, middle), (below.entry, middle)))
        things += below.things
        under += below.height - _UP
    return Row(tuple(shapes), max(under, *feet, 0.0), tuple(things), strand.nodes[0].hop, entry, None if last else x)


def _written(node: Node, x1: float, x2: float, from_afar: bool) -> tuple[Shape, ...]:
    """The numbers of the hop into a node, drawn from `x1` to `x2`, and the name of the chain that begins with it.

    The name stands on the line where this is long enough for both, else higher.
    """
    hop, named = node.hop, text_width(node.caption, LETTERS)
    if hop is not None and node.caption and x2 - x1 > named + 4 + hop_width(hop):
        low = MIDDLE - 1.2 - (SIDE if hop.stereo else 0.0)
        return (Label(x1 + 2, low, node.caption), *marks(hop, x1 + named + 4, x2, MIDDLE))
    caption = (Label(x1 + 1, MIDDLE - BAR / 2 - 1.4, node.caption),) if node.caption else ()
    if hop is None:
        return caption
    return (*caption, *marks(hop, x2 - hop_width(hop) if from_afar else x1, x2, MIDDLE))
