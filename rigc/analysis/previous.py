"""Previous: the revision that this one is compared with, as a value that computations, checks and sheets can ask for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.model.records import AsBuilt
from rigc.model.rig import Rig
from rigc.record import Record

if TYPE_CHECKING:
    from rigc.analysis.results import Results


class Previous(Record):
    """What follows from the revision before, with its things called as this revision calls them; `results` is None where
    this revision follows none.

    `as_built` holds what is stated about the board of that revision, in either source, the latest last; a unit that was swapped
    is swapped in `results` already. `renamed` maps this revision's names to those before. `effort` is how many steps of search
    its places were given (None: the usual number).
    """

    results: Results | None = None
    as_built: tuple[AsBuilt, ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()
    effort: int | None = None

    @property
    def letter(self) -> str:
        """The letter of the revision before; empty without one."""
        return "" if self.results is None else self.results.rig.head.letter


NOTHING_BEFORE = Previous()


def followed(rig: Rig, previous: Previous) -> Results | None:
    """What follows from the revision that the rig says it follows: its numbers and outlets stay where nothing speaks against them. None where
    it is only compared with another."""
    return previous.results if rig.head.follows is not None else None


def follows(previous: Previous) -> bool:
    """Whether there is a revision to compare with."""
    return previous.results is not None
