"""A deck whose size differs -> the same, told as another deck where it differs by more than a tape errs."""

from __future__ import annotations

from rigc.analysis.revision.compared.aspect import DESIGN, REDRILL
from rigc.analysis.revision.compared.changed import CHANGED, ChangedThing, Difference
from rigc.facts.rework import SAME_DECK_MM

_SIZES = ("width", "depth")


def with_decks_exchanged(things: tuple[ChangedThing, ...]) -> tuple[ChangedThing, ...]:
    """A deck that is 80 mm wider was not measured wrongly: all that stands on it is moved to another one."""
    return tuple(_exchanged(each) if each.kind == "deck" and each.how == CHANGED else each for each in things)


def _exchanged(thing: ChangedThing) -> ChangedThing:
    if not any(map(_is_other, thing.differences)):
        return thing
    sizes = tuple(
        each.replace(work=(REDRILL,), origin=DESIGN) if each.field in _SIZES else each for each in thing.differences
    )
    told: ChangedThing = thing.replace(differences=sizes)
    return told


def _is_other(each: Difference) -> bool:
    sizes = each.exact_before, each.exact_now
    numbers = [size for size in sizes if isinstance(size, int | float)]
    return each.field in _SIZES and len(numbers) == 2 and abs(numbers[0] - numbers[1]) > SAME_DECK_MM.value
