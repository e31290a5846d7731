"""The aspects of two revisions, and who is who -> the things that are said otherwise, without causes."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from rigc.analysis.revision.compared.aspect import DESIGN, PAPER, REDRILL, RELABEL, Aspect, Key
from rigc.analysis.revision.compared.changed import (
    ADDED,
    CHANGED,
    REMOVED,
    RENAMED,
    RENUMBERED,
    REPLACED,
    ChangedThing,
    Difference,
)
from rigc.analysis.revision.compared.facts import LABELS
from rigc.analysis.revision.compared.pairs import Pair
from rigc.analysis.revision.compared.words import NONE

_BY_NAME = {RENAMED: (PAPER,), REPLACED: (REDRILL,), RENUMBERED: (RELABEL,)}
"""What another name asks for: a unit that stands in for another is taken off and the other put on."""
_STANDS_IN = LABELS["stands_in"]
"""What tells of a successor once more, where it is told as one."""
ROUNDING = "the figure is the same when it is rounded"


Thing = dict[str, Aspect]
"""The aspects of one thing by their fields."""


def changed_things(
    old: Mapping[Key, Aspect], new: Mapping[Key, Aspect], pairs: tuple[Pair, ...]
) -> tuple[ChangedThing, ...]:
    """In the order of the new revision, kind by kind; what went stands behind what stayed of its kind."""
    before, after = _by_thing(_as_labelled(old.values(), pairs)), _by_thing(new.values())
    said = {(kind, pair.now): pair for pair in pairs for kind in pair.kinds}
    moved = {(kind, pair.then) for pair in pairs if pair.how != RENAMED for kind in pair.kinds}
    went = dict(before)
    found: list[ChangedThing] = []
    for (kind, name), thing in after.items():
        pair = said.get((kind, name))
        was = name if pair is None or pair.how == RENAMED else pair.then
        other = pair is None and (kind, name) in moved
        found += _thing(kind, name, None if other else went.pop((kind, was), None), thing, pair)
    for (kind, name), thing in went.items():
        found += _thing(kind, name, thing, None, None)
    kinds = dict.fromkeys(kind for kind, _ in (*after, *before))
    order = {kind: number for number, kind in enumerate(kinds)}
    return tuple(sorted(found, key=lambda each: order[each.kind]))


def old_key(thing: ChangedThing, difference: Difference) -> Key:
    """What the revision before knows a difference by: its things are called as they are now, unless that was a guess."""
    return thing.kind, thing.name if thing.how == RENAMED else thing.was or thing.name, difference.field


def _by_thing(aspects: Iterable[Aspect]) -> dict[tuple[str, str], Thing]:
    things: dict[tuple[str, str], Thing] = {}
    for each in aspects:
        things.setdefault((each.kind, each.name), {})[each.field] = each
    return things


def _as_labelled(aspects: Iterable[Aspect], pairs: tuple[Pair, ...]) -> Iterator[Aspect]:
    """The labels on the board still bear the names of before."""
    names = {pair.now: pair.then for pair in pairs if pair.how == RENAMED}
    if not names:
        yield from aspects
        return
    word = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, names))})(?![\w-])")
    for each in aspects:
        if each.field.startswith("label") and each.kind in ("lead", "special lead"):
            text = word.sub(lambda found: names[found[0]], each.text)
            yield each.replace(text=text, value=text)
        else:
            yield each


def _thing(kind: str, name: str, old: Thing | None, new: Thing | None, pair: Pair | None) -> Iterator[ChangedThing]:
    if old is None or new is None:
        there, sign = (new, ADDED) if old is None else (old, REMOVED)
        whole = tuple(_one_sided(each, sign) for each in (there or {}).values())
        yield ChangedThing(kind, name, "", sign, "", whole)
        return
    stood = pair is not None and pair.how == REPLACED
    differences = tuple(each for each in _differences(old, new) if not (stood and each.field == _STANDS_IN))
    if pair is None:
        if differences:
            yield ChangedThing(kind, name, "", CHANGED, "", differences)
    elif kind in pair.kinds[:2]:
        called = Difference("name", pair.then, pair.now, pair.then, pair.now, _BY_NAME[pair.how], DESIGN, new[""].span)
        yield ChangedThing(kind, name, pair.then, pair.how, pair.why, (called, *differences))
    elif differences:
        yield ChangedThing(kind, name, pair.then, pair.how, pair.why, differences)


def _one_sided(aspect: Aspect, how: str) -> Difference:
    before, now = (None, aspect) if how == ADDED else (aspect, None)
    return _difference(before, now, None, detail=aspect.detail or not (aspect.field == "" or RELABEL in aspect.work))


def _differences(old: Thing, new: Thing) -> Iterator[Difference]:
    for field in dict.fromkeys((*new, *old)):
        before, now = old.get(field), new.get(field)
        there = now or before
        if there is None or (before is not None and now is not None and before.value == now.value):
            continue
        held = ROUNDING if before is not None and now is not None and before.text == now.text else ""
        yield _difference(before, now, NONE, held=held, detail=there.detail)


def _difference(before: Aspect | None, now: Aspect | None, none: str | None, **more: Any) -> Difference:
    """Of two aspects of a field, of which at least one is there; `none` is told in place of the other."""
    there = now or before
    assert there is not None
    return Difference(
        there.field,
        none if before is None else before.text,
        none if now is None else now.text,
        None if before is None else before.value,
        None if now is None else now.value,
        there.work,
        there.origin,
        there.span,
        **more,
    )
