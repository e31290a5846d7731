"""The best layout of a search, and by what two of them are told apart."""

from __future__ import annotations

from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.record import Record


class Found(Record):
    """The best layout of a search: where all stand, what is in the way there or breaks a rule (0: nothing), what wishes miss, its cost,
    the steps taken, and whether the search was stopped before its end."""

    at: tuple[At, ...]
    hard: int
    missed: int
    cost: int
    steps: int = 0
    stopped: bool = False

    @property
    def rank(self) -> tuple[int, int, int]:
        """The less, the better: nothing makes up for what is in the way, and no length of cable for a wish."""
        return self.hard, self.missed, self.cost


def as_it_is(layout: Layout) -> Found:
    """What is found before a search begins."""
    return Found(tuple(layout.at), layout.hard + layout.broken, layout.missed, layout.cost)
