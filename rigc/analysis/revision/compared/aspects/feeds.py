"""Feeds: where each unit takes its power, at which voltage; and what each outlet bears."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.revision.compared.aspect import COMPUTED, DESIGN, REPOWER, Aspect
from rigc.diagnostics.figures import plain, share


def feeds(power: PowerAssignment) -> Iterator[Aspect]:
    """A unit's feed is work, and design where it is stated; an outlet's load follows from it."""
    for feed in power.feeds:
        value = (
            tuple(map(str, feed.outlets)),
            feed.volts,
            feed.current,
            feed.how,
            feed.reversed,
            feed.lower and str(feed.lower),
        )
        origin = DESIGN if feed.stated else COMPUTED
        yield Aspect("feed", feed.unit, "", _words(feed), value, origin, (REPOWER,), feed.span)
    for port, load in power.loads.items():
        users = ", ".join(load.units) or "free"
        yield Aspect("outlet", str(port), "", users, load.units, COMPUTED, detail=True)
        yield Aspect("outlet", str(port), "load", _load(load), (load.known_ma, load.unknown), COMPUTED, detail=True)


def _words(feed: Supplied) -> str:
    outlets = " + ".join(map(str, feed.outlets))
    lower = "" if feed.lower is None else f"lower {feed.lower}"
    how = " ".join(filter(None, (feed.how, lower, "reversed" if feed.reversed else "")))
    return f"{outlets}{f' {how}' if how else ''} at {plain(feed.volts)} V {feed.current.upper()}"


def _load(load: OutletLoad) -> str:
    if load.unknown:
        return "not known"
    percent = "" if load.percent is None else f", {share(load.percent)} %"
    return f"{plain(round(load.known_ma, 3))} of {plain(load.limit_ma)} mA at {plain(load.volts)} V{percent}"


ASPECTS = feeds
