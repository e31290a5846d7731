"""Labels and the places where each might stand -> where they do: none over another, and the fewest lines crossed."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from rigc.reports.drawings.means.label_box import Room, label_box
from rigc.reports.drawings.shapes import Label, Point

_APART = 0.35  # between two labels, in mm
_LATER, _CROSSED = 0.05, 0.2  # what each place further down the order costs, and each line that is crossed


class LabelRoom:
    """The ground of a drawing and what stands on it already."""

    def __init__(self, ground: Room) -> None:
        self._ground = ground
        self._letters: list[Room] = []
        self._lines: list[Room] = []

    def keep(self, *labels: Label) -> None:
        """These labels stand where they are; others keep clear of them."""
        self._letters += [label_box(label) for label in labels]

    def keep_clear(self, room: Room) -> None:
        """No label goes into this room."""
        self._letters.append(room)

    def line(self, points: Iterable[Point], half_width: float = 0.3) -> None:
        """A line (of upright and level stretches) that labels should rather not cross."""
        for (x1, y1), (x2, y2) in pairwise(points):
            self._lines.append(Room(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).wider(half_width))

    def place(self, choices: Iterable[Label], within: Room | None = None) -> Label | None:
        """The best of the choices, and it stands from now on; None if each would cover another label or leave `within`."""
        best: Label | None = None
        cost = float("inf")
        for rank, label in enumerate(choices):
            here = self._cost(label, within or self._ground) + rank * _LATER
            if here < cost:
                best, cost = label, here
        if best is not None:
            self.keep(best)
        return best

    def _cost(self, label: Label, within: Room) -> float:
        box = label_box(label)
        apart = box.wider(_APART)
        if not box.within(within) or not box.within(self._ground):
            return float("inf")
        if any(apart.meets(other) for other in self._letters):
            return float("inf")
        return sum(_CROSSED for line in self._lines if box.meets(line))
