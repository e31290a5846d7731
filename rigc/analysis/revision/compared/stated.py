"""Things that are said otherwise, and the changes that the rig block states -> the things with the numbers of theirs."""

from __future__ import annotations

import re

from rigc.analysis.revision.compared.changed import ChangedThing
from rigc.model.records import Change

_WIRED = ("", "first end", "second end", "ends")


def with_stated(things: tuple[ChangedThing, ...], changes: tuple[Change, ...]) -> tuple[ChangedThing, ...]:
    """A change touches what bears one of its names, and what is now joined to that thing, or no longer is."""
    if not changes:
        return things
    return tuple(each.replace(stated=numbers) if (numbers := _numbers(each, changes)) else each for each in things)


def _numbers(thing: ChangedThing, changes: tuple[Change, ...]) -> tuple[int, ...]:
    names = {thing.name, thing.was} | _joined(thing)
    return tuple(change.number for change in changes if names & set(change.touches))


def _joined(thing: ChangedThing) -> set[str]:
    """Names that stand in what is said now or in what was said before, and not in both."""
    found: set[str] = set()
    for each in thing.differences:
        if each.field in _WIRED:
            found |= set(_words(each.before)) ^ set(_words(each.now))
    return found


def _words(text: str | None) -> list[str]:
    return re.findall(r"[\w-]+", text or "")
