"""The changes of the rig block -> to which of them a piece of the rework belongs, and whether that one is done."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.records import Change
from rigc.record import Record


class ChangeLedger(Record):
    """The changes of a revision, and the numbers of those that the board that is there has already."""

    changes: tuple[Change, ...]
    done: frozenset[int]

    def of(self, own: Iterable[str], about: Iterable[str] = ()) -> dict[str, int | bool | None]:
        """`change` and `done` of what bears the names or numbers `own`: the first change that touches one of them, else
        the first that touches a thing that it is `about`. A lone change that names nothing is about everything."""
        number = next((found for names in (own, about) if (found := self._touching(frozenset(names)))), None)
        if number is None and len(self.changes) == 1 and not self.changes[0].touches:
            number = self.changes[0].number
        return {"change": number, "done": number in self.done}

    def _touching(self, names: frozenset[str]) -> int | None:
        return next((each.number for each in self.changes if names & frozenset(each.touches)), None)
