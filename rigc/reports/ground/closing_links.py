"""Trees of grounds -> what closes rings in them, and the lines that show it on the right of all boxes."""

from __future__ import annotations

from rigc.reports.drawing.lettering import text_width
from rigc.reports.ground.tree import Tree
from rigc.reports.shapes import THICK, Box, Circle, Label, Line, Point, Polyline, Shape


def closings(tree: Tree) -> list[tuple[int, int, str]]:
    """Pairs of rows with what joins them beside the tree: a further lead, or the mains earth of both."""
    found = [(one, two, f"{' + '.join(link.marks)} closes a ring") for one, two, link in tree.closing]
    earthed = [at for at, row in enumerate(tree.rows) if row.pole is not None and row.pole in tree.earthed]
    return found + [(earthed[0], other, "the mains closes a ring") for other in earthed[1:]]


def closing(one: Point, two: Point, x: float, words: str) -> tuple[Shape, ...]:
    """A thick broken line from box to box by way of `x`, and its words."""
    way = (one, (x, one[1]), (x, two[1]), two)
    return (
        Polyline(way, colour="vermillion", pattern="dash-dot", width_mm=THICK),
        Label(x + 1.5, (one[1] + two[1]) / 2, words, level="middle", halo=True),
    )


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
