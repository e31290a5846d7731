"""Units that an outlet does not suit -> those of them that it does not suit for one reason, together: one cause, one finding."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence
from typing import TypeVar

from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap
from rigc.model.jacks import Port

Reason = TypeVar("Reason", bound=Hashable)


def same_cause(faults: Iterable[tuple[Supplied, Hashable]]) -> tuple[tuple[Supplied, ...], ...]:
    """The feeds from the same outlets with the same reason, in order of the first of each."""
    found: dict[tuple[tuple[Port, ...], Hashable], list[Supplied]] = {}
    for feed, reason in faults:
        found.setdefault((feed.outlets, reason), []).append(feed)
    return tuple(tuple(group) for group in found.values())


def whole_lines(power: PowerAssignment, faults: Sequence[tuple[Supplied, Hashable]]) -> list[tuple[Supplied, ...]]:
    """Of the feeds from single outlets those that one line of a supply is to blame for: all that it feeds, from two outlets of it or more,
    is wrong for the same reason."""
    return _wholly_wrong(power, faults, lambda tap: tap.settings[0].volts.span.start)


def whole_supplies(power: PowerAssignment, faults: Sequence[tuple[Supplied, Hashable]]) -> list[tuple[Supplied, ...]]:
    """The same of all outlets of a supply that have the same pole in the middle."""
    return _wholly_wrong(power, faults, lambda tap: tap.polarity)


def whole_connectors(power: PowerAssignment, faults: Sequence[tuple[Supplied, Hashable]]) -> list[tuple[Supplied, ...]]:
    """The same of all outlets of a supply that have the same connector."""
    return _wholly_wrong(power, faults, lambda tap: tap.connector)


def remaining(
    faults: Iterable[tuple[Supplied, Reason]], whole: Iterable[tuple[Supplied, ...]]
) -> Iterator[tuple[Supplied, Reason]]:
    """The faults without those of feeds for which a whole line or supply is to blame."""
    told = {feed.unit for feeds in whole for feed in feeds}
    return (fault for fault in faults if fault[0].unit not in told)


def _wholly_wrong(
    power: PowerAssignment, faults: Sequence[tuple[Supplied, Hashable]], line: Callable[[Tap], Hashable]
) -> list[tuple[Supplied, ...]]:
    reasons = {feed.unit: reason for feed, reason in faults}
    lines: dict[tuple[str, Hashable], list[Supplied]] = {}
    for feed in power.feeds:
        tap = power.taps[feed.unit]
        if not tap.how:
            lines.setdefault((tap.outlets[0].thing, line(tap)), []).append(feed)
    return [
        tuple(feeds)
        for feeds in lines.values()
        if len({feed.outlets for feed in feeds}) > 1
        and all(feed.unit in reasons for feed in feeds)
        and len({reasons[feed.unit] for feed in feeds}) == 1
    ]
