"""Trees of grounds -> what closes rings in them, and the lines that show it on the right of all boxes."""

from __future__ import annotations

from rigc.reports.drawings.ground.tree import Tree
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, THICK, Box, Circle, Label, Line, Polyline, Shape

BETWEEN, BESIDE = 5.0, 1.4
"""From one closing line to the next, in mm: where they run down, and where they end at one row."""


def closings(tree: Tree) -> list[tuple[int, int, str]]:
    """Pairs of rows with what joins them beside the tree: a further run of leads, or the mains earth of both."""
    found = [(one, two, " + ".join(link.marks) or "the metal") for one, two, link in tree.closing]
    earthed = [at for at, row in enumerate(tree.rows) if row.pole is not None and row.pole in tree.earthed]
    return found + [(earthed[0], other, "the mains") for other in earthed[1:]]


def closing_lines(
    closed: list[tuple[int, int, str]], middles: list[float], rights: list[float], words_from: list[float]
) -> list[Shape]:
    """Thick broken lines from row to row, on the right of all that stands in the rows, which reach to `rights`; of each row the words
    begin no further left than `words_from`.

    Several that end at one row lie one under the other; each has its words where it has a row for itself, if it can.
    """
    uses = [sum(at in pair[:2] for pair in closed) for at in range(len(middles))]
    ends, taken, spare = list(map(max, rights, words_from)), [0] * len(middles), []
    for one, two, words in closed:
        at = one if uses[one] < uses[two] else two
        spare.append((at, ends[at] + 1.5))
        ends[at] += text_width(words, LETTERS) + 3
    joined = [at for pair in closed for at in pair[:2]]
    edge = max(ends[min(joined) : max(joined) + 1]) + 3 if joined else 0.0  # right of what stands between them, too
    shapes: list[Shape] = []
    for count, ((one, two, words), (at, x_words)) in enumerate(zip(closed, spare, strict=True)):
        x, heights = edge + BETWEEN * count, []
        for row in (one, two):
            heights.append(middles[row] + BESIDE * taken[row])
            taken[row] += 1
        way = ((rights[one], heights[0]), (x, heights[0]), (x, heights[1]), (rights[two], heights[1]))
        shapes.append(Polyline(way, colour="vermillion", pattern="dash-dot", width_mm=THICK))
        shapes.append(Label(x_words, middles[at] - 1.2, words, colour="blue"))
    return shapes


def right_of(shape: Shape) -> float:
    """How far a shape of this drawing reaches to the right, in mm."""
    if isinstance(shape, Label):
        half = 0.5 if shape.anchor == "middle" else 1.0
        return shape.x + half * text_width(shape.text, shape.size_mm, shape.strong)
    if isinstance(shape, Box):
        return shape.x + shape.width
    if isinstance(shape, Polyline):
        return max(x for x, _ in shape.points)
    if isinstance(shape, Line):
        return max(shape.x1, shape.x2)
    return shape.x + shape.radius if isinstance(shape, Circle) else getattr(shape, "x", 0.0) + 3.0
