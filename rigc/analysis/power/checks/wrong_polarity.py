"""The polarity of an outlet's centre pin is not the unit's, or not known, and no reversing lead is stated; or one is, and it is wrong.

Why it matters: reversed polarity destroys most units at once.
What to do: use a reversing lead, mark both its ends, and check the plug with a meter before it goes in.
Source: arithmetic on stated values. rigc itself assumes no polarity: pedals mostly have the centre negative [common
practice, no source], other things mostly positive.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_fit import assumed_polarity, takes_polarity
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap, outlets_named
from rigc.analysis.feeds.unit_needs import inlet_of
from rigc.analysis.power.mends.feed_edits import restated, stated_feed
from rigc.analysis.power.mends.other_feeds import moves
from rigc.analysis.power.mends.same_cause import remaining, same_cause, whole_supplies
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Delete, Edit, Mend
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "wrong-polarity",
    Level.ERROR,
    __doc__,
    "outlet and unit agree in the centre pin's polarity, a stated reversing lead counted",
    "arithmetic on stated values",
)


def wrong_polarity(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for the units of one outlet that have the same wrong polarity, one for each unit and each supply that does not state it, a warning for each unit
    whose polarity is assumed; can't-check where the plug's kind is not known either."""
    silent: dict[str, dict[str, Tap]] = {}
    wrong = []
    for feed in power.feeds:
        unit, tap = rig.units[feed.unit], power.taps[feed.unit]
        fit = takes_polarity(unit, tap, feed.reversed)
        if unit.inlet is None and unit.on_battery:
            continue  # it is told that it shall not be fed at all
        if fit is None and unit.polarity is None:
            yield _silent_unit(feed, unit, tap)
        elif fit is None:
            silent.setdefault(tap.outlets[0].thing, {})[unit.name] = tap
        elif not fit:
            wrong.append((feed, (unit.polarity and unit.polarity.value, feed.reversed)))
        elif assumed_polarity(unit, tap):
            yield _assumed(feed, unit, tap)
    whole = whole_supplies(power, [(feed, pole) for feed, (pole, turned) in wrong if not turned])
    for feeds in whole:
        yield _whole_supply(rig, power, feeds)
    for feeds in same_cause(remaining(wrong, whole)):
        yield _told(rig, power, limits, feeds)
    for supply, taps in silent.items():
        yield _silent_supply(rig, power, supply, taps)


def _silent_unit(feed: Supplied, unit: Unit, tap: Tap) -> Diagnostic:
    said = f"the polarity of '{unit.name}' is not stated; whether it may be plugged into {tap} is not known"
    help = f"measure it before anything is plugged in and write it in the block of '{unit.name}': polarity ___"
    if unit.inlet is None:
        return KIND.cant_check(unit.declared, said, subject=(unit.name,), help=help, wants=(inlet_of(unit.name),))
    also = (Label(feed.span, "plugged in here"),) if feed.stated else ()
    return KIND.at(
        unit.declared,
        said,
        subject=(unit.name,),
        label="its plug could destroy it",
        also=also,
        help=help,
        asks_for=(f"the polarity of {unit.name}",),
    )


def _assumed(feed: Supplied, unit: Unit, tap: Tap) -> Diagnostic:
    assert unit.polarity is not None
    return KIND.at(
        unit.polarity.span,
        f"that '{unit.name}' is {unit.polarity.value} is assumed, and {tap} feeds it",
        subject=(unit.name,),
        label="assumed",
        also=(Label(feed.span, "plugged in here"),) if feed.stated else (),
        help=f"measure it before anything is plugged in, and write in the block of '{unit.name}' who measured it and when",
        level=Level.WARNING,
    )


def _silent_supply(rig: Rig, power: PowerAssignment, supply: str, taps: dict[str, Tap]) -> Diagnostic:
    outlets = dict.fromkeys(port for each in taps.values() for port in each.outlets)
    feeds = [feed for name in taps if (feed := power.of(name)) is not None and feed.stated]
    return KIND.at(
        rig.supplies[supply].declared,
        f"the polarity of {outlets_named(taps.values())} is not stated; whether {listed(taps)} may be plugged in "
        "is not known",
        subject=(supply, *taps),
        label=f"{'its plug' if len(outlets) == 1 else 'their plugs'} could destroy a unit",
        also=tuple(Label(feed.span, f"'{feed.unit}' is plugged in here") for feed in feeds[:3]),
        help=f"measure it before anything is plugged in and write it in the block of '{supply}': polarity ___",
        asks_for=(f"the polarity of {supply}",),
    )


def _whole_supply(rig: Rig, power: PowerAssignment, feeds: tuple[Supplied, ...]) -> Diagnostic:
    """Whatever these outlets of a supply feed has the other pole in the middle."""
    supply = feeds[0].outlets[0].thing
    names, taps = [feed.unit for feed in feeds], [power.taps[feed.unit] for feed in feeds]
    pole = rig.units[names[0]].polarity
    return KIND.at(
        rig.supplies[supply].declared,
        f"{outlets_named(taps)} are {taps[0].polarity}, and all that they feed is {pole.value if pole else ''}: the supply of {listed(names)} "
        "would be reversed",
        subject=(supply, *names),
        label=taps[0].polarity or "",
        also=tuple(Label(feed.span, "fed from there") for feed in feeds[:3]),
        help=f"measure an outlet of '{supply}', and correct its `polarity` if it is wrong; or give each of them a reversing lead, with a "
        "label at both ends: write `reversed` behind the outlet",
    )


def _told(rig: Rig, power: PowerAssignment, limits: LoadLimits, feeds: tuple[Supplied, ...]) -> Diagnostic:
    first, tap = feeds[0], power.taps[feeds[0].unit]
    poles = [fact for feed in feeds if (fact := rig.units[feed.unit].polarity) is not None]
    through = " through a reversing lead" if first.reversed else ""
    names, one = tuple(feed.unit for feed in feeds), len(feeds) == 1
    theirs = "its supply" if one else "their supply"
    return KIND.at(
        first.span,
        f"{listed(names)} {'is' if one else 'are'} {poles[0].value} and {tap} is {tap.polarity}{through}: {theirs} would be reversed",
        subject=(*names, *(str(port) for port in tap.outlets)),
        label="reversed polarity",
        also=tuple(Label(pole.span, pole.value) for pole in {each.span.start: each for each in poles}.values()),
        mends=_mends(rig, power, limits, first, names),
        otherwise=f"give {listed(names)} {'an outlet of its own' if one else 'outlets of their own'}, and a "
        f"{'straight' if first.reversed else 'reversing'} lead with a label at both ends",
    )


def _mends(
    rig: Rig, power: PowerAssignment, limits: LoadLimits, feed: Supplied, names: tuple[str, ...]
) -> tuple[Mend, ...]:
    """The lead turned, or turned back; where other units stand on the outlet, these on another one."""
    stated = stated_feed(rig, feed.unit)
    if stated is None or set(stated.units) != set(names):
        return moves(rig, power, names[0], limits)[:1] if len(names) == 1 else ()
    adaptors = tuple(each for each in rig.lead_wishes.adaptors if each.kind == "reversing" and each.unit in names)
    if feed.reversed:
        said: list[str] = []
        edits: list[Edit] = [Delete(each.span) for each in adaptors]
        if adaptors:
            which = "the reversing adaptor" if len(adaptors) == 1 else "the reversing adaptors"
            said.append(f"take {which} {' and '.join(it.mark for it in adaptors)} away")
        if stated.reversed:
            said.append(f"feed {listed(names)} through a straight lead: delete `reversed`")
            edits += restated(stated, turned=False)
        return (Mend(", and ".join(said), tuple(edits)),) if edits else ()
    words = (
        f"feed {listed(names)} through a reversing lead, with a label at both ends: write `reversed` behind the outlet"
    )
    return (Mend(words, restated(stated, turned=True)),)


CHECK = wrong_polarity
