"""Things that are said otherwise -> the same with the causes: what was stated anew, or for what is computed what brings it about."""

from __future__ import annotations

from rigc.analysis.revision.aspects import Aspects
from rigc.analysis.revision.compared.aspect import COMPUTED, DESIGN, FACTS, RULES, STOCK
from rigc.analysis.revision.compared.changed import CHANGED, RENAMED, RENUMBERED, ChangedThing, Difference
from rigc.analysis.revision.compared.hybrids import hybrid
from rigc.analysis.revision.compared.things import old_key
from rigc.model.rig import Rig

_ORDER = (DESIGN, FACTS, STOCK, RULES)
_KEPT = (CHANGED, RENAMED, RENUMBERED)


def with_causes(things: tuple[ChangedThing, ...], old: Rig, new: Rig, effort: int | None) -> tuple[ChangedThing, ...]:
    """A stated change is its own cause. For a computed one it is the only cause that was stated; where there are several,
    the old rig is computed again with each of them alone, which is not done before it is needed."""
    stated = {cause for each in things for cause in _stated(each)}
    judge = _Judge(old, new, effort, tuple(cause for cause in _ORDER if cause in stated) or (DESIGN,))
    return tuple(_judged(each, judge) for each in things)


def _stated(thing: ChangedThing) -> list[str]:
    if thing.kind == "rig":
        return []  # what the pages bear brings nothing about
    return [_own_cause(thing, each) for each in thing.differences if each.origin != COMPUTED]


def _own_cause(thing: ChangedThing, difference: Difference) -> str:
    """The facts of a thing that came, went or was exchanged are none that were corrected; a new cable is a change of the stock."""
    corrected = thing.how in _KEPT or thing.kind in ("cable", "plug", "strip", "premade lengths", "limit")
    return difference.origin if corrected else DESIGN


def _judged(thing: ChangedThing, judge: _Judge) -> ChangedThing:
    told: ChangedThing = thing.replace(
        differences=tuple(
            each.replace(causes=(_own_cause(thing, each),) if each.origin != COMPUTED else judge.causes(thing, each))
            for each in thing.differences
        )
    )
    return told


class _Judge:
    """Finds the causes of what is computed; keeps each rig that it had to compute for it."""

    def __init__(self, old: Rig, new: Rig, effort: int | None, possible: tuple[str, ...]) -> None:
        self.old = old
        self.new = new
        self.effort = effort
        self.possible = possible
        self.others = tuple(cause for cause in possible if cause != DESIGN)
        self._made: dict[tuple[str, ...], Aspects] = {}

    def causes(self, thing: ChangedThing, difference: Difference) -> tuple[str, ...]:
        """Those that alone bring it about; else those that move it at all, and the design where they do not suffice together."""
        if len(self.possible) == 1:
            return self.possible
        key = old_key(thing, difference)
        alone = {cause: self._value(key, (cause,)) for cause in self.others}
        enough = tuple(cause for cause, value in alone.items() if value == difference.exact_now)
        if enough:
            return enough
        moving = tuple(cause for cause, value in alone.items() if value != difference.exact_before)
        together = len(self.others) > 1 and self._value(key, self.others) == difference.exact_now
        if together:
            return moving or self.others
        return (DESIGN, *moving)

    def _value(self, key: tuple[str, str, str], causes: tuple[str, ...]) -> object:
        if causes not in self._made:
            self._made[causes] = hybrid(self.old, self.new, causes, self.effort).get(Aspects)
        aspect = self._made[causes].by_key.get(key)
        return None if aspect is None else aspect.value
