"""Difference, ChangedThing: what two revisions say otherwise, thing by thing, with the work and the cause."""

from __future__ import annotations

from typing import Any

from rigc.analysis.revision.compared.aspect import WORK
from rigc.record import Record
from rigc.source import Span

ADDED, REMOVED, CHANGED, RENAMED, REPLACED, RENUMBERED = (
    "added",
    "removed",
    "changed",
    "renamed",
    "replaced",
    "renumbered",
)


class Difference(Record):
    """A field that is said otherwise; `before` and `now` are texts with units, None where the one or the other says nothing.

    `exact_before` and `exact_now` are what was compared. `causes` are design, facts, stock or rules; several where none of
    them alone brings it about. `held` is the reason why it asks for no work (empty where it does) and is not told unless
    everything is asked for; neither is a `detail`.
    """

    field: str
    before: str | None
    now: str | None
    exact_before: Any
    exact_now: Any
    work: tuple[str, ...]
    origin: str
    span: Span | None
    causes: tuple[str, ...] = ()
    held: str = ""
    detail: bool = False

    @property
    def told(self) -> bool:
        """Whether it is told without being asked for."""
        return not self.held and not self.detail


class ChangedThing(Record):
    """A thing of a kind that came, went or is said otherwise. `was` is its name before; `how` is added, removed, changed,
    renamed, replaced or renumbered; `why` is the reason of a guess: what both are. `stated` are the numbers of the changes that the rig
    block states of it."""

    kind: str
    name: str
    was: str
    how: str
    why: str
    differences: tuple[Difference, ...]
    stated: tuple[int, ...] = ()

    @property
    def told(self) -> bool:
        """Whether anything of it is told without being asked for."""
        return self.how in (RENAMED, REPLACED) or any(each.told for each in self.differences)

    @property
    def work(self) -> tuple[str, ...]:
        """The kinds of work that it asks for, the one that takes most first; paper only where there is no other."""
        asked = {word for each in self.differences if not each.held for word in each.work}
        return tuple(word for word in WORK[:-1] if word in asked) or WORK[-1:]

    @property
    def causes(self) -> tuple[str, ...]:
        """Why, over all that is told of it; over all of it where nothing is."""
        told = [each for each in self.differences if each.told] or self.differences
        return tuple(dict.fromkeys(cause for each in told for cause in each.causes))
