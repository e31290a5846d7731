"""A unit's voltage window does not contain the voltage of its outlet.

Why it matters: too much voltage destroys a unit at once; with too little it hums, distorts or starts again and again.
What to do: set the outlet to the unit's voltage, or feed the unit from another one.
Source: arithmetic on stated values. How far an outlet may be off is not stated anywhere: at the very end of a unit's window that can't
be checked, and inside it a measurement tells. Where an outlet gives just the least that its unit takes, a lead that loses no more than
{power.END_LOSS_SHARE} of it decides nothing. A unit that does not say what it accepts takes only what it needs.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_fit import takes_current, takes_polarity, takes_voltage, window_v
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap, outlet_at, outlets_named
from rigc.analysis.feeds.power_tap import tap as tap_at
from rigc.analysis.feeds.unit_needs import needs_of
from rigc.analysis.power.companies import shorted
from rigc.analysis.power.mends.feed_edits import restated, stated_feed
from rigc.analysis.power.mends.other_feeds import moves, switched, together
from rigc.analysis.power.mends.same_cause import remaining, same_cause, whole_lines
from rigc.analysis.power.power_network import InletVolts, PowerNetwork
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.facts.power import END_LOSS_SHARE
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.things import Rating, Unit

KIND = Kind(
    "wrong-voltage",
    Level.ERROR,
    __doc__,
    "the outlet's voltage, less what its lead loses, lies in what the unit accepts; at the very end of that nobody can tell",
    "arithmetic on stated values",
)


def wrong_voltage(rig: Rig, power: PowerAssignment, network: PowerNetwork, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for the units of one outlet, or of one line of outlets, that take the same other voltage; can't-check where the unit does not say what it takes."""
    wrong, short = [], shorted(rig, power)
    for feed in power.feeds:
        unit, tap = rig.units[feed.unit], power.taps[feed.unit]
        fit, turned = takes_voltage(unit, tap), takes_polarity(unit, tap, feed.reversed) is False
        if fit is None:
            yield KIND.cant_check(
                unit.declared,
                f"'{unit.name}' on {tap} does not say what voltage it needs; whether {tap.volts:g} V are right can't be checked",
                subject=(unit.name,),
                help=f"write `needs` or `accepts` in '{unit.name}'",
                wants=(needs_of(unit.name),),
            )
        elif not fit:
            wrong.append((feed, window_v(unit)))
        elif _missing_setting(rig, unit.name, tap):
            yield _no_setting(rig, unit, tap, feed)
        elif (inlet := network.of(unit.name)) is not None and _sags(unit, tap, inlet) and not turned:
            if unit.name in short:
                continue  # told as shared-positive-ground
            yield _sagging(feed, unit, tap, inlet)
        elif (end := _at_an_end(unit, tap)) is not None:
            yield _unsure(feed, unit, tap, end)
    whole = whole_lines(power, wrong)
    for feeds in whole:
        yield _whole_line(rig, power, feeds)
    for feeds in same_cause(remaining(wrong, whole)):
        yield _told(rig, power, limits, feeds)


def _no_setting(rig: Rig, unit: Unit, tap: Tap, feed: Supplied) -> Diagnostic:
    stated = stated_feed(rig, unit.name)
    rating = tap.settings[0].volts.value
    return KIND.at(
        feed.span,
        f"{_missing_setting(rig, unit.name, tap)}, at which it shall feed '{unit.name}'",
        subject=(unit.name, *(str(port) for port in tap.outlets)),
        label="no such setting",
        also=tuple(Label(each.span, "what it gives") for each in tap.settings[:1]),
        mends=() if stated is None else (Mend(f"write `at {rating:g} V`", restated(stated, volts=rating)),),
        help="" if stated is not None else "name a setting that it has",
    )


def _at_an_end(unit: Unit, tap: Tap) -> Quantity | None:
    """The end of a stated window at which the outlet stands, so that nothing is left for what it may be off."""
    low, high = unit.accepts_low_v, unit.accepts_high_v
    if low is None or high is None or low.value == high.value:
        return None
    return next((end for end in (high, low) if abs(tap.volts - end.value) <= 1e-9), None)


def _unsure(feed: Supplied, unit: Unit, tap: Tap, end: Quantity) -> Diagnostic:
    port, most = tap.outlets[0], end is unit.accepts_high_v
    return KIND.cant_check(
        feed.span,
        f"'{unit.name}' takes no {'more' if most else 'less'} than {end.value:g} V and {tap} {tap.gives} just that: how far the "
        f"outlet may be off is not stated, and whether it stays {'below' if most else 'above'} can't be checked",
        subject=(unit.name, *(str(port) for port in tap.outlets)),
        help=f"measure {tap} with nothing on it and with '{unit.name}', and write in the block of '{port.thing}' what it gives: outlet "
        f"{port.jack} ___ V {tap.current}",
    )


def _sags(unit: Unit, tap: Tap, inlet: InletVolts) -> bool:
    """Whether what arrives is less than a window that is stated; exactly its end is not, nor a hair less of an outlet that gives just that:
    there what the outlet may be off decides."""
    if not inlet.known or unit.accepts_low_v is None:
        return False
    least = (window_v(unit) or (0.0,))[0]
    if abs(tap.volts - least) <= 1e-9 and _at_an_end(unit, tap) is not None:
        least *= 1 - END_LOSS_SHARE.value / 100
    return inlet.least_v < least - 1e-9


def _sagging(feed: Supplied, unit: Unit, tap: Tap, inlet: InletVolts) -> Diagnostic:
    low, _ = window_v(unit) or (0.0, 0.0)
    least = decimals(inlet.least_v, 2) if inlet.least_v < low - 0.005 else decimals(inlet.least_v, 4)
    return KIND.at(
        feed.span,
        f"'{unit.name}' takes no less than {low:g} V; {tap} {tap.gives} {tap.volts:g} V and {least} V of them arrive",
        subject=(unit.name, *(str(port) for port in tap.outlets)),
        label="its lead loses the rest",
        also=tuple(Label(each.span, "what it takes") for each in (unit.accepts_low_v,) if each is not None),
        numbers=(Number("arriving", inlet.least_v, "V"), Number("lowest", low, "V")),
        help="use a thicker or shorter lead, or an outlet of its own",
    )


def _whole_line(rig: Rig, power: PowerAssignment, feeds: tuple[Supplied, ...]) -> Diagnostic:
    """Whatever these outlets of a supply feed takes the same other voltage."""
    names, taps = [feed.unit for feed in feeds], [power.taps[feed.unit] for feed in feeds]
    given, supply = taps[0].settings[0].volts, taps[0].outlets[0].thing
    low, high = window_v(rig.units[names[0]]) or (0.0, 0.0)
    return KIND.at(
        given.span,
        f"{outlets_named(taps)} give {given.value:g} V, and all that they feed takes {_window(low, high)}: {listed(names)}",
        subject=(supply, *names),
        label="too much voltage" if given.value > high else "too little voltage",
        also=tuple(Label(feed.span, "fed from there") for feed in feeds[:3]),
        numbers=(Number("given", given.value, "V"), Number("lowest", low, "V"), Number("highest", high, "V")),
        help=f"read the plate of '{supply}', and correct `{given.typed}` there if it gives another voltage; or feed them from another supply",
    )


def _window(low: float, high: float) -> str:
    return f"{low:g} V" if low == high else f"{low:g}..{high:g} V"


def _told(rig: Rig, power: PowerAssignment, limits: LoadLimits, feeds: tuple[Supplied, ...]) -> Diagnostic:
    names, units = tuple(feed.unit for feed in feeds), [rig.units[feed.unit] for feed in feeds]
    unit, tap = units[0], power.taps[names[0]]
    low, high = window_v(unit) or (0.0, 0.0)
    facts = [fact for each in units if (fact := each.accepts_low_v or each.volts) is not None]
    return KIND.at(
        feeds[0].span,
        f"{listed(names)} {'takes' if len(feeds) == 1 else 'take'} {_window(low, high)}, {tap} {tap.gives} {tap.volts:g} V",
        subject=(*names, *(str(port) for port in tap.outlets)),
        label="too much voltage" if tap.volts > high else "too little voltage",
        also=tuple(Label(fact.span, "what it takes") for fact in facts),
        numbers=(Number("given", tap.volts, "V"), Number("lowest", low, "V"), Number("highest", high, "V")),
        note=_missing_setting(rig, unit.name, tap),
        mends=_mends(rig, power, limits, names, tap),
        otherwise=_switch_moved(rig, power, limits, unit, tap)
        or f"no move or exchange does it: add a supply with one of {unit.volts.value if unit.volts else low:g} V",
    )


def _missing_setting(rig: Rig, name: str, tap: Tap) -> str:
    feed = stated_feed(rig, name)
    if feed is None or feed.volts is None or any(each.volts.value == feed.volts.value for each in tap.settings):
        return ""
    return f"{tap} has no setting of {feed.volts.value:g} V"


def _mends(rig: Rig, power: PowerAssignment, limits: LoadLimits, names: tuple[str, ...], tap: Tap) -> tuple[Mend, ...]:
    """The outlet left as its maker set it; else the unit on another outlet."""
    rating, feed = _setting(rig, power, tap), stated_feed(rig, names[0])
    outlet = outlet_at(rig, tap.outlets[0])
    if rating is not None and feed is not None and outlet is not None and rating == outlet.ratings[0]:
        volts = f"{rating.volts.value:g} V"
        return (Mend(f"set {tap} to {volts}: write `at {volts}`", restated(feed, volts=rating.volts.value)),)
    return moves(rig, power, names[0], limits) if len(names) == 1 else together(rig, power, names, limits)


def _switch_moved(rig: Rig, power: PowerAssignment, limits: LoadLimits, unit: Unit, tap: Tap) -> str:
    """The outlet, or another one, at a setting that is not its maker's."""
    rating = _setting(rig, power, tap)
    if rating is None:
        return switched(rig, power, unit.name, limits)
    volts = f"{rating.volts.value:g} V"
    return f"set {tap} to {volts}: write `at {volts}`, and tape its switch over (moved-switch then warns of it)"


def _setting(rig: Rig, power: PowerAssignment, tap: Tap) -> Rating | None:
    """The first setting of a single outlet that all its units take."""
    outlet = outlet_at(rig, tap.outlets[0]) if len(tap.outlets) == 1 else None
    units = [rig.units[name] for name in power.loads[tap.outlets[0]].units]
    for rating in outlet.ratings if outlet is not None else ():
        way = tap_at(rig, tap.outlets, "", (rating,))
        if all(takes_voltage(each, way) and takes_current(each, way) for each in units):
            return rating
    return None


CHECK = wrong_voltage
