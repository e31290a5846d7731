"""A thing bears the name of an earlier one with `was`, and neither its size nor any of its jacks agree with that one.

Why it matters: `was` says that it is the same thing under another name: the rework sheet then prints new labels only, and
nobody takes the old one off the board.
What to do: where another thing takes its place, write `stands in for` instead of `was`; where it is the same thing, measure
it again.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.previous import Previous
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.rig import Rig
from rigc.model.things import Supply, Thing

KIND = Kind(
    "renamed-other-thing",
    Level.WARNING,
    __doc__,
    "a renamed thing keeps a side of its body, or a jack",
    "common practice, no source",
)


def renamed_other_thing(rig: Rig, previous: Previous) -> Iterator[Diagnostic]:
    """One finding for each rename in which all that is stated of both differs; none where too little is stated to tell."""
    old = previous.results.rig if previous.results is not None else None
    for now, then in previous.renamed:
        # the earlier rig calls a renamed thing by its new name already
        before, after = None if old is None else old.things.get(now), rig.things.get(now)
        if not isinstance(before, Thing) or not isinstance(after, Thing) or after.was_at is None:
            continue
        if _another_size(before, after) and _other_jacks(before, after):
            yield KIND.at(
                after.was_at,
                f"'{now}' is said to be '{then}' under another name, but neither its size nor any of its jacks agree",
                subject=(now, then),
                label="said here",
                mends=(Mend(f"write `stands in for {then}`", (Replace(after.was_at, f"stands in for {then}"),)),),
                help="measure it again, if it is the same thing",
            )


def _another_size(before: Thing, after: Thing) -> bool:
    pairs = [
        (one.value, other.value)
        for one, other in zip(_sides(before), _sides(after), strict=True)
        if one is not None and other is not None
    ]
    return bool(pairs) and all(one != other for one, other in pairs)


def _sides(thing: Thing) -> tuple[Any, ...]:
    return thing.width_mm, thing.depth_mm, thing.height_mm


def _other_jacks(before: Thing, after: Thing) -> bool:
    return bool(_seats(before)) and bool(_seats(after)) and not _seats(before) & _seats(after)


def _seats(thing: Thing) -> set[tuple[Any, ...]]:
    """What a jack or outlet is and where it sits; its name is only what the builder calls it."""
    found: set[tuple[Any, ...]] = {
        (jack.role, jack.connector, jack.side, _value(jack.offset_mm), _value(jack.height_mm)) for jack in thing.jacks
    }
    if isinstance(thing, Supply):
        found |= {("outlet", each.side, _value(each.offset_mm), _value(each.height_mm)) for each in thing.outlets}
    return found


def _value(fact: Any) -> float | None:
    return None if fact is None else fact.value


CHECK = renamed_other_thing
