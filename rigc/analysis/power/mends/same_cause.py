"""Units that an outlet does not suit -> those of them that it does not suit for one reason, together: one cause, one finding."""

from __future__ import annotations

from collections.abc import Hashable, Iterable

from rigc.analysis.feeds.power_assignment import Supplied
from rigc.model.jacks import Port


def same_cause(faults: Iterable[tuple[Supplied, Hashable]]) -> tuple[tuple[Supplied, ...], ...]:
    """The feeds from the same outlets with the same reason, in order of the first of each."""
    found: dict[tuple[tuple[Port, ...], Hashable], list[Supplied]] = {}
    for feed, reason in faults:
        found.setdefault((feed.outlets, reason), []).append(feed)
    return tuple(tuple(group) for group in found.values())
