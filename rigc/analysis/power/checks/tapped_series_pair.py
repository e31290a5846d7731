"""A unit stands on an outlet of a series pair that feeds another unit, or on one whose return is joined to the pair's midpoint.

Why it matters: the upper outlet's return is the lower one's positive pole. The shield of an audio lead joins the grounds of the two units
and shorts the lower outlet through itself: amperes through leads and jacks, or a dead supply.
What to do: give the other unit an outlet that is isolated from the pair; or let it stand on the pair's lower outlet, say so with
`lower`, and make the lead so.
Source: physics: a series connection, Kirchhoff's laws.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.joined_outlets import pair_names
from rigc.analysis.feeds.load_limits import HARD
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap
from rigc.analysis.feeds.series_midpoint import live_outlets, shared
from rigc.analysis.power.mends.feed_edits import fed_from, restated, stated_feed
from rigc.analysis.power.mends.free_outlets import free_outlets
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend
from rigc.model.jacks import Port
from rigc.model.rig import Rig

KIND = Kind(
    "tapped-series-pair",
    Level.ERROR,
    __doc__,
    "no other unit on an outlet of a series pair but the one stated as lower, or on a return joined to the midpoint",
    "physics: a series connection, Kirchhoff's laws",
)


def tapped_series_pair(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each unit that stands on the midpoint of another's pair."""
    for feed in power.feeds:
        pair = power.taps[feed.unit]
        live = live_outlets(rig, (feed.unit,), pair)
        if not live:
            continue
        for other in power.feeds:
            way = power.taps[other.unit]
            port = next((each for each in way.outlets if each in live), None)
            if port is not None and (way.outlets, way.how) != (pair.outlets, pair.how):
                yield _told(rig, power, feed, other, port)


def _told(rig: Rig, power: PowerAssignment, feed: Supplied, other: Supplied, port: Port) -> Diagnostic:
    pair = power.taps[feed.unit]
    through = next((each for each in pair.outlets if shared(rig, each) is not None and port not in pair.outlets), None)
    where = f"'{port}'"
    if through is not None:
        where += f", whose return is that of '{through}' (common '{shared(rig, through)}')"
    unsure = "" if pair.lower is not None else " if it is the upper one; which is the lower is not stated"
    return KIND.at(
        other.span,
        f"{pair_names(pair)} in series feed '{feed.unit}', and '{other.unit}' stands on {where}: a short through the audio "
        f"shield{unsure}",
        subject=(other.unit, feed.unit, str(port)),
        label="at the midpoint of a series pair",
        also=(Label(feed.span, "the series pair"),),
        help="give it an outlet that is isolated from the pair",
        mends=(*_moved(rig, power, other), *_lower(rig, feed, pair, port)),
    )


def _moved(rig: Rig, power: PowerAssignment, other: Supplied) -> Iterator[Mend]:
    way = next(free_outlets(rig, power, rig.units[other.unit], HARD), None)
    if way is not None:
        yield Mend(f"feed '{other.unit}' from {way}", fed_from(rig, other.unit, way))


def _lower(rig: Rig, feed: Supplied, pair: Tap, port: Port) -> Iterator[Mend]:
    """The outlet that is stood on, or shares its return with that, as the lower one."""
    stated = stated_feed(rig, feed.unit)
    common = shared(rig, port)
    low = next((each for each in pair.outlets if each == port or (common and shared(rig, each) == common)), None)
    if stated is not None and low is not None and low.thing == port.thing and low != pair.lower:
        yield Mend(f"make '{low}' the lower outlet of the pair", restated(stated, lower=low))


CHECK = tapped_series_pair
