"""A tree of grounds -> parts that each fit on a page; a ground on which a later part hangs is drawn there again."""

from __future__ import annotations

from rigc.analysis.ground.ring_words import pole_words
from rigc.record import Record
from rigc.reports.drawings.ground.closing_links import closings
from rigc.reports.drawings.ground.tree import Tree, TreeRow

BOX_Y = 5.6
"""The height of a ground's box, in mm."""

SIDE_Y, SPINE_Y, TOLD_Y = 7.6, 10.4, 4.5
"""From one row to the next: what stands straight below needs room for the label of its lead; a line of words at the foot."""

HEAD, FOOT = 9.0, 4.0
"""What the heading of a part and the air below it take, in mm."""


class TreePart(Record):
    """Rows of a tree, the lines that close rings between two of them (as row, row, words), and what lies on other parts."""

    heading: str
    rows: tuple[TreeRow, ...]
    closed: tuple[tuple[int, int, str], ...]
    told: tuple[str, ...] = ()

    @property
    def middles(self) -> list[float]:
        """The height of each row's middle below the part's upper edge, in mm."""
        found = [HEAD + BOX_Y / 2]
        for row in self.rows[1:]:
            found.append(found[-1] + (SPINE_Y if row.spine else SIDE_Y))
        return found

    @property
    def height(self) -> float:
        """Of the whole part, in mm."""
        return self.middles[-1] + BOX_Y / 2 + FOOT + TOLD_Y * len(self.told)


def tree_parts(tree: Tree, heading: str, most: float) -> tuple[TreePart, ...]:
    """As few rows are cut off as keep each part within `most` mm; a single row stands whatever it takes."""
    closed = closings(tree)
    whole = TreePart(heading, tree.rows, tuple(closed))
    if whole.height <= most:
        return (whole,)
    parts: list[TreePart] = []
    start = 0
    while start < len(tree.rows):
        part, stop = _part(tree, closed, start, start + 1), start + 1
        while stop < len(tree.rows) and (longer := _part(tree, closed, start, stop + 1)).height <= most:
            part, stop = longer, stop + 1
        parts.append(part)
        start = stop
    return tuple(part.replace(heading=f"{heading} ({number} of {len(parts)})") for number, part in enumerate(parts, 1))


def _part(tree: Tree, closed: list[tuple[int, int, str]], start: int, stop: int) -> TreePart:
    rows = tree.rows[start:stop]
    before = sorted({row.parent for row in rows if row.parent is not None and row.parent < start})
    again = [tree.rows[at].replace(parent=None, spine=True, links=(), again=True) for at in before]
    at = {old: new for new, old in enumerate((*before, *range(start, stop)))}
    kept = [row.replace(parent=None if row.parent is None else at[row.parent]) for row in rows]
    here, told = [], []
    for one, two, words in closed:
        own = [start <= each < stop for each in (one, two)]
        if all(own):
            here.append((at[one], at[two], words))
        elif any(own):
            near, far = (one, two) if own[0] else (two, one)
            told.append(f"{words}: {_words(tree, near)} to {_words(tree, far)}, on another part, closes a ring")
    return TreePart("", (*again, *kept), tuple(here), tuple(told))


def _words(tree: Tree, at: int) -> str:
    pole = tree.rows[at].pole
    return "" if pole is None else pole_words(pole)
