"""A name that needs a place, and the places that it has."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial

from rigc.record import Record
from rigc.reports.drawings.means.choosing import Choice, Stand
from rigc.reports.drawings.shapes import SMALL_LETTERS, Shape

FEW, KEPT = 8, 30
"""So many free places of a name are compared: of one whose cheapest is in nobody's way, and of all others."""


class Wish(Record):
    """A name that needs a place; `choices` gives those it has, the best first: it is asked no further than there is need. It is a
    function with what it is called with (`partial`), so that what hangs on it can be kept.
    `title` says in full what it stands for, to who points at it or has it read aloud; `sign` draws what stands there instead of
    letters."""

    choices: Callable[[], Iterable[Choice]]
    title: str = ""
    sign: Callable[[float, float], tuple[Shape, ...]] | None = None


def in_small_letters(wish: Wish) -> Wish:
    """The same places in letters of that size."""
    return Wish(partial(_small, wish))


def cost_of(stand: Stand) -> float:
    """In mm."""
    return stand.cost


def _small(wish: Wish) -> Iterator[Choice]:
    return (choice._replace(size_mm=SMALL_LETTERS) for choice in wish.choices())
