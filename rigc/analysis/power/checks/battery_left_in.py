"""An outlet feeds a unit whose battery is stated as its only supply, or feeds it by the clip that the battery would be on.

Why it matters: the crew change, or count on, a battery that isn't there, or one stays in that nobody looks at, until it leaks. Where
battery and supply are joined, the supply charges a battery that is not made for it, which may burst or leak.
What to do: open the unit and look. Fed by an outlet it does not run on its battery only; fed by its battery clip it holds none.
Take the battery out before the supply is plugged in.
Source: the facts that the source states against each other; that cells which are not rechargeable must not be charged: IEC 60086-5, from
memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.power.mends.feed_edits import not_fed, stated_feed
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.things import Battery, Unit

KIND = Kind(
    "battery-left-in",
    Level.WARNING,
    __doc__,
    "what an outlet feeds does not run on its battery only, and holds none where its clip is the inlet",
    "the facts stated, against each other",
)


def battery_left_in(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each such unit."""
    for unit in used_units(rig):
        feed = power.of(unit.name)
        if unit.battery is not None and feed is not None and (unit.battery.only or _by_clip(unit)):
            yield _told(rig, unit, unit.battery, feed)


def _by_clip(unit: Unit) -> bool:
    return unit.inlet is not None and unit.inlet.connector.kind == "snap"


def _told(rig: Rig, unit: Unit, battery: Battery, feed: Supplied) -> Diagnostic:
    outlets = listed(map(str, feed.outlets))
    gives = f"{outlets} {'feeds' if len(feed.outlets) == 1 else 'feed'}"
    message = f"{gives} '{unit.name}', which is stated to run on its battery only ({battery.kind})"
    if _by_clip(unit):
        message = f"{gives} '{unit.name}' by its battery clip, and its battery ({battery.kind}) is stated too"
    return KIND.at(
        battery.span,
        message,
        subject=(unit.name, *map(str, feed.outlets)),
        label="this battery",
        also=(Label(feed.span, "fed here"),) if feed.stated else (),
        mends=tuple(_mends(rig, unit, battery)),
        help=f"open '{unit.name}', and take out what battery is in it before the supply is plugged in",
    )


def _mends(rig: Rig, unit: Unit, battery: Battery) -> Iterator[Mend]:
    """What the outlet makes untrue goes; or the outlet, where the unit could do without."""
    if _by_clip(unit):
        yield Mend(f"if no battery is in '{unit.name}', delete its `battery`", (Delete(battery.span),))
    else:
        text = battery.span.text.removesuffix("only").rstrip()
        yield Mend(f"if '{unit.name}' has an inlet, delete `only`", (Replace(battery.span, text),))
    stated = stated_feed(rig, unit.name)
    if battery.only and stated is not None:
        yield Mend(f"if it runs on its battery, take '{unit.name}' off the outlet", (not_fed(stated, unit.name),))


CHECK = battery_left_in
