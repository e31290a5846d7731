"""The outlines on one deck -> what is in the way there: quick answers for many leads, in tenths of a millimetre."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cached_property
from operator import attrgetter, itemgetter

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.clearance import UNDERSIDE_MM
from rigc.model.deck import Deck
from rigc.model.geometry.polygon import Polygon, chord
from rigc.model.rig import Rig
from rigc.record import Record


class Box(Record):
    """What a thing covers of its deck, in tenths of a millimetre; `under` things hang below it.

    One that stands `askew` has its corners there, and the rectangle around it otherwise. `beneath` is what it costs a lead to
    pass beneath one that hangs: down its height and up again. None where too little room is left between it and the
    floor, or nobody knows how much.
    """

    thing: str
    left: int
    front: int
    right: int
    rear: int
    under: bool
    askew: Polygon = ()
    beneath: int | None = None

    def across(self, y: int) -> tuple[float, float] | None:
        """From which x to which it covers a line along x; None where it does not."""
        if self.askew:
            return chord(self.askew, y)
        return (self.left, self.right) if self.front < y < self.rear else None

    def crossed_by(self, start: tuple[int, int], end: tuple[int, int]) -> bool:
        """Whether a straight stretch along x or y goes through its inside, or that of the rectangle around it; the edges are free."""
        (x1, y1), (x2, y2) = start, end
        left, right = (x1, x2) if x1 < x2 else (x2, x1)
        front, rear = (y1, y2) if y1 < y2 else (y2, y1)
        return left < self.right and right > self.left and front < self.rear and rear > self.front


HangingAt = tuple[int, int, int, int, int | None]
"""Left, front, right and rear of what hangs, and what it costs to pass beneath it."""


class _Filed:
    """Boxes along one axis of the deck, in the order of where they begin, each with its place among them all."""

    def __init__(self, boxes: Iterable[Box], begin: Callable[[Box], int], end: Callable[[Box], int]) -> None:
        self._boxes = sorted(enumerate(boxes), key=lambda each: begin(each[1]))
        self._begins = [begin(box) for _, box in self._boxes]
        self._longest = max((end(box) - begin(box) for _, box in self._boxes), default=0)

    def stretch(self, start: int, end: int) -> tuple[int, int]:
        """From which to which of them all stand that reach there; others may, too."""
        return bisect_left(self._begins, start - self._longest), bisect_right(self._begins, end)

    def at(self, stretch: tuple[int, int]) -> list[tuple[int, Box]]:
        return self._boxes[stretch[0] : stretch[1]]


class _Shelf:
    """Boxes of one side of the deck, filed along both its axes."""

    def __init__(self, boxes: Sequence[Box]) -> None:
        self._across = _Filed(boxes, attrgetter("left"), attrgetter("right"))
        self._along = _Filed(boxes, attrgetter("front"), attrgetter("rear"))

    def between(self, one: tuple[int, int], other: tuple[int, int]) -> list[Box]:
        """Those that reach into the strip between the x of two points, and up to what lies between their y, in their order."""
        (left, front), (right, rear) = one, other
        left, right = (left, right) if left < right else (right, left)
        front, rear = (front, rear) if front < rear else (rear, front)
        columns, rows = self._across.stretch(left, right), self._along.stretch(front, rear)
        fewer = columns[1] - columns[0] < rows[1] - rows[0]
        near = [
            each
            for each in (self._across.at(columns) if fewer else self._along.at(rows))
            if each[1].left < right and each[1].right > left and each[1].front <= rear and each[1].rear >= front
        ]
        near.sort(key=itemgetter(0))
        return [box for _, box in near]


class DeckBoxes:
    """All boxes and drop lines of one deck, filed so that a question looks at few of them."""

    def __init__(self, boxes: Iterable[Box], lines: Iterable[int]) -> None:
        self.lines = sorted(lines)
        self.by_thing = {box.thing: box for box in boxes}
        self.hanging = tuple(box for box in self.by_thing.values() if box.under)
        self.hanging_at: tuple[HangingAt, ...] = tuple(
            (box.left, box.front, box.right, box.rear, box.beneath) for box in self.hanging
        )
        self._covered: dict[int, tuple[list[float], list[float]]] = {}
        self._across: dict[int, list[tuple[Box, tuple[float, float]]]] = {}

    @cached_property
    def _top(self) -> _Shelf:
        return _Shelf([box for box in self.by_thing.values() if not box.under])

    @cached_property
    def _low(self) -> _Shelf:
        return _Shelf(self.hanging)

    @cached_property
    def _along(self) -> _Filed:
        return _Filed(self.by_thing.values(), attrgetter("front"), attrgetter("rear"))

    def on_top(self, one: tuple[int, int], other: tuple[int, int]) -> list[Box]:
        """The things on top that may reach between two points."""
        return self._top.between(one, other)

    def hanging_between(self, one: tuple[int, int], other: tuple[int, int]) -> list[Box]:
        """What hangs there and may reach between two points, in the order of `hanging`."""
        return self._low.between(one, other) if self.hanging else []

    def covers(self, x: int, y: int) -> bool:
        """Whether a point lies strictly inside a footprint, above or below the deck; edges leave it free."""
        if y not in self._covered:
            self._covered[y] = self._covered_at(y)
        lefts, rights = self._covered[y]
        at = bisect_left(lefts, x) - 1
        return at >= 0 and x < rights[at]

    def cover(self, x: int, line: int) -> Box | None:
        """The first thing that covers a line along x at that x; its edges leave it free."""
        if line not in self._across:
            near = sorted(self._along.at(self._along.stretch(line, line)), key=itemgetter(0))
            across = ((box, box.across(line)) for _, box in near)
            self._across[line] = [(box, part) for box, part in across if part is not None]
        return next((box for box, (left, right) in self._across[line] if left < x < right), None)

    def drop_line(self, x: int, y: int, other_y: int) -> int | None:
        """The line nearest to y that is free at x; on a tie the one nearer to the other end's y, then the one in front.

        None if every line is covered there.
        """
        return next((line for line in self.lines_from(y, other_y) if not self.covers(x, line)), None)

    def lines_from(self, y: int, other_y: int) -> Iterator[int]:
        """The lines in the order of their distance from y; on a tie the one nearer to the other end's y, then the one in front."""
        behind = bisect_left(self.lines, y)
        before = behind - 1
        while before >= 0 or behind < len(self.lines):
            if before < 0:
                is_front = False
            elif behind == len(self.lines):
                is_front = True
            else:
                front, rear = self.lines[before], self.lines[behind]
                is_front = (y - front, abs(other_y - front)) <= (rear - y, abs(other_y - rear))
            yield self.lines[before if is_front else behind]
            if is_front:
                before -= 1
            else:
                behind += 1

    def _covered_at(self, y: int) -> tuple[list[float], list[float]]:
        """The stretches of a line in x that are covered; two that only touch leave the point between them free."""
        lefts: list[float] = []
        rights: list[float] = []
        near = self._along.at(self._along.stretch(y, y))
        across = sorted(found for _, box in near if (found := box.across(y)) is not None)
        for left, right in across:
            if rights and left < rights[-1]:
                rights[-1] = max(rights[-1], right)
            else:
                lefts.append(left)
                rights.append(right)
        return lefts, rights


def deck_boxes(rig: Rig, placement: Placement) -> dict[str | None, DeckBoxes]:
    """What everything covers, deck by deck."""
    boxes: dict[str | None, list[Box]] = {name: [] for name in rig.decks}
    for outline in placement.outlines.values():
        boxes.setdefault(outline.deck, []).append(_box(rig, outline))
    lines = {name: tuple(tenths(line) for line in deck.drops_mm) for name, deck in rig.decks.items()}
    return {deck: DeckBoxes(each, lines.get(deck or "", ())) for deck, each in boxes.items()}


def _box(rig: Rig, outline: Outline) -> Box:
    return Box(
        outline.thing,
        tenths(outline.x_mm),
        tenths(outline.y_mm),
        tenths(outline.area.right_mm),
        tenths(outline.area.rear_mm),
        outline.under,
        tuple((x * 10, y * 10) for x, y in outline.askew),
        cost_beneath(rig.decks.get(outline.deck or ""), outline.height_mm) if outline.under else None,
    )


def cost_beneath(deck: Deck | None, height_mm: float | None) -> int | None:
    """What it costs a lead to pass beneath a thing of that height that hangs below the deck, in tenths of a millimetre; None where it can't
    or nobody knows. It runs as far below what hangs as it does below the deck: it goes down by the height of the body, and up again.
    """
    if height_mm is None or deck is None or deck.clearance_mm is None:
        return None
    fits = height_mm + UNDERSIDE_MM.value <= deck.clearance_mm.value
    return 2 * tenths(height_mm) if fits else None
