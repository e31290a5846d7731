"""Trees of grounds -> the one-line drawing: boxes for grounds, lines with lead numbers, earths, breaks, closing links."""

from __future__ import annotations

from rigc.analysis.ground.breaks import breaks
from rigc.analysis.ground.ring_words import pole_words
from rigc.analysis.ground.states import GroundState, GroundSystem
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import GROUND, GroundLink
from rigc.reports.content import Drawing
from rigc.reports.drawings.ground.closing_links import closing_lines, right_of
from rigc.reports.drawings.ground.legend import legend, strokes
from rigc.reports.drawings.ground.parts import BOX_Y, TOLD_Y, TreePart, tree_parts
from rigc.reports.drawings.ground.tree import Tree, TreeRow, system_tree
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, THICK, Box, Circle, Label, Line, Polyline, Shape
from rigc.reports.symbols import class_ii, earth

STEP_X, STEM = 30.0, 4.0
LEFT, TOP, LEGEND = 4.0, 4.0, 20.0

UPRIGHT, TURNED = (180.0, 240.0), 150.0
"""The width and height of a drawing on an upright page, and its height on a turned one, in mm."""


def one_lines(rig: Rig, leads: Leads, state: GroundState, number: int) -> tuple[Drawing, ...]:
    """The drawings of one state, as many as pages are needed; `number` sets their names apart from those of other scenarios."""
    scenario = rig.scenarios[state.scenarios[0]] if state.scenarios else None
    parted = breaks(rig, leads, scenario)
    trees = [
        (system_tree(state, system, parted), _heading(count, system)) for count, system in enumerate(state.systems, 1)
    ]
    pages = _pages(trees, UPRIGHT[1])
    if max((_width(rig, page) for page in pages), default=0.0) > UPRIGHT[0]:
        pages = _pages(trees, TURNED)
    return tuple(_drawing(rig, state, number, page, at, len(pages)) for at, page in enumerate(pages, 1))


def _pages(trees: list[tuple[Tree, str]], high: float) -> list[list[TreePart]]:
    """Systems are kept whole where a page holds them; several share one as far as they fit."""
    room = high - TOP - LEGEND
    pages: list[list[TreePart]] = [[]]
    for tree, heading in trees:
        for part in tree_parts(tree, heading, room):
            if pages[-1] and sum(each.height for each in pages[-1]) + part.height > room:
                pages.append([])
            pages[-1].append(part)
    return pages


def _width(rig: Rig, page: list[TreePart]) -> float:
    """Of the parts of a page and its legend, in mm."""
    shapes = [shape for part in page for shape in _part(rig, part, 0.0)]
    return max(map(right_of, (*shapes, *legend(shapes, LEFT, 0.0))), default=0.0) + LEFT


def _drawing(rig: Rig, state: GroundState, number: int, page: list[TreePart], at: int, count: int) -> Drawing:
    shapes: list[Shape] = []
    top = TOP
    for part in page:
        shapes += _part(rig, part, top)
        top += part.height
    shapes += legend(shapes, LEFT, top)
    where = ", ".join(state.scenarios)
    width = _width(rig, page)
    name = f"grounds-{number}" if number else "grounds"
    return Drawing(
        name=name if count == 1 else f"{name}-part-{at}",
        title=(f"Grounds: {where}" if where else "Grounds") + (f" ({at} of {count})" if count > 1 else ""),
        desc=_described(state),
        width_mm=round(width, 1),
        height_mm=round(top + LEGEND, 1),
        shapes=tuple(shapes),
        landscape=width > UPRIGHT[0],
    )


def _part(rig: Rig, part: TreePart, top: float) -> list[Shape]:
    """A heading, the rows, and in words what other parts show."""
    middles = [top + middle for middle in part.middles]
    foot = middles[-1] + BOX_Y / 2 + 2
    told = [Label(LEFT, foot + TOLD_Y * (at + 1) - 1, words) for at, words in enumerate(part.told)]
    return [Label(LEFT, top + LETTERS, part.heading, strong=True), *_tree(rig, part, middles), *told]


def _heading(count: int, system: GroundSystem) -> str:
    earths = len(system.earths)
    told = "no earth" if not earths else f"{earths} earth{'s' if earths > 1 else ''}: {', '.join(system.earths)}"
    return f"System {count}: {told}"


def _described(state: GroundState) -> str:
    parts = [
        f"system {number} joins {', '.join(system.members)}; earthed: {', '.join(system.earths) or 'none'}"
        for number, system in enumerate(state.systems, 1)
    ]
    return f"Grounds as joined. {'. '.join(parts)}."


def _tree(rig: Rig, part: TreePart, middles: list[float]) -> list[Shape]:
    shapes: list[Shape] = []
    words_from = []
    for row, middle in zip(part.rows, middles, strict=True):
        joint = [] if row.parent is None else _joint(row, middles[row.parent] + BOX_Y / 2, middle)
        words_from.append(
            right_of(joint[-1]) - 0.5 if joint and row.spine else 0.0
        )  # beside the words of the lead above
        shapes += joint
    rights = []
    for row, middle in zip(part.rows, middles, strict=True):
        drawn = _parted(row, middle) if row.pole is None else _ground(rig, row, middle)
        rights.append(max(right_of(shape) for shape in drawn) + (1 if len(drawn) > 2 else 0))
        shapes += drawn
    return [*shapes, *closing_lines(list(part.closed), middles, rights, words_from)]


def _ground(rig: Rig, row: TreeRow, middle: float) -> list[Shape]:
    """A box, with its earth or its class II mark; what is no thing of its own (a common, a panel's metal) is dashed."""
    if row.pole is None:
        return []
    x, words = LEFT + STEP_X * row.indent, pole_words(row.pole) + (", again" if row.again else "")
    width = text_width(words, LETTERS) + 5
    own = row.pole[1] == GROUND
    shapes: list[Shape] = [
        Box(x, middle - BOX_Y / 2, width, BOX_Y, pattern="solid" if own and not row.again else "dashed", fill="white"),
        Label(x + width / 2, middle, words, anchor="middle", level="middle"),
    ]
    if row.again:
        return shapes
    lifts = [str(port) for link in row.links for port in link.lifts]
    unit = rig.units.get(row.pole[0]) or rig.instruments.get(row.pole[0]) if own else None
    if unit is not None and unit.earth == "earthed":
        shapes += [
            Line(x + width, middle, x + width + 9, middle, width_mm=THICK),
            earth(x + width + 9, middle + 2.3, 4.6),
        ]
    elif unit is not None and unit.earth == "double-insulated":
        shapes.append(class_ii(x + width + 5, middle, 4.0))
    elif unit is not None and unit.may_be_earthed:
        shapes.append(Label(x + width + 2, middle, "earth not stated", level="middle"))
    if lifts:
        shapes.append(Label(x + width + 14, middle, f"lift closed: {', '.join(lifts)}", level="middle"))
    return shapes


def _joint(row: TreeRow, start: float, middle: float) -> list[Shape]:
    """From the ground above: straight down, or down and to the right; strokes across it count leads side by side."""
    pattern = "dashed" if row.parted is not None else "solid"
    stem = LEFT + STEP_X * (row.indent - (not row.spine)) + STEM
    words = _words(row.links) if row.parted is None else " + ".join(row.parted.marks)
    label = Label(stem + 2.5, middle - (BOX_Y / 2 if row.spine else 0) - 1.2, words, colour="blue", halo=True)
    if row.spine:
        end = middle - BOX_Y / 2
        return [Line(stem, start, stem, end, pattern=pattern), *strokes(len(row.links), stem, end - 2.4), label]
    x = LEFT + STEP_X * row.indent
    way = Polyline(((stem, start), (stem, middle), (x, middle)), pattern=pattern)
    return [way, *strokes(len(row.links), x - 3, middle), label]


def _words(links: tuple[GroundLink, ...]) -> str:
    """Leads in a row with `+`, leads side by side with a comma."""
    return ", ".join(" + ".join(link.marks) for link in links)


def _parted(row: TreeRow, middle: float) -> list[Shape]:
    """Where the ground ends: an open circle, and in words by what and before what."""
    if row.parted is None:
        return []
    x = LEFT + STEP_X * row.indent
    words = f"{row.parted.port}: {row.parted.how}; beyond: {row.parted.beyond}"
    return [
        Circle(x + 1, middle, 1.0, fill="white", width_mm=THICK),
        Label(x + 4, middle, words, level="middle"),
    ]
