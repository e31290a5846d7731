"""A trial -> the answers on power: what must be right before any plug goes in, safety first."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import exceeds
from rigc.analysis.feeds.outlet_fit import (
    needs_outlet,
    resized,
    reversing,
    takes_connector,
    takes_current,
    takes_polarity,
    takes_voltage,
    window_v,
)
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap
from rigc.analysis.power.joint_loads import JointLoad, JointLoads
from rigc.analysis.revision.substitute.feeds import FeedWay
from rigc.analysis.revision.substitute.trial import Trial
from rigc.diagnostics.diagnostic import Level
from rigc.diagnostics.figures import share
from rigc.model.things import Unit
from rigc.reports.revision.swap.answer import NO, UNKNOWN, WORK, YES, Answer

_POSITIVE = "shared-positive-ground"  # the rule on shared positive grounds


def power_answers(trial: Trial) -> tuple[Answer, ...]:
    """One for each property of the feed; of the one that was found where the unit took no power and the substitute does."""
    into = trial.into
    power = trial.plugged.get(PowerAssignment)
    feed, tap = power.of(into.name), power.taps.get(into.name)
    if not into.powered:
        text = f"tie back the lead that fed '{trial.out.name}'" if trial.out.powered else "needs none"
        return (Answer("power", "", "none", WORK if trial.out.powered else YES, text, "tie back the power lead"),)
    if not needs_outlet(into):
        text = f"'{into.name}' wants mains of its own, which no outlet of this board gives"
        return (Answer("power", "", "mains", NO, text, text),)
    if feed is not None and tap is not None:
        return tuple(_answers(trial, into, feed, tap))
    way = trial.ways[0].taps[0][1] if trial.ways else None
    if way is None:
        return (_outlet(trial, "no outlet", None),)
    return (*_properties(trial, into, way, False), _outlet(trial, "no outlet", None))


def _answers(trial: Trial, into: Unit, feed: Supplied, tap: Tap) -> Iterator[Answer]:
    yield from _properties(trial, into, tap, feed.reversed or into.name in reversing(trial.plugged.rig))
    loads = [load for load in trial.plugged.get(JointLoads).all if into.name in load.units]
    yield _outlet(trial, str(tap), loads[0] if loads else None)
    for way in trial.ways[1:2] if trial.weak else trial.ways[:2]:
        yield Answer("another way", "", "", WORK, way_words(way))


def _properties(trial: Trial, into: Unit, tap: Tap, turned: bool) -> Iterator[Answer]:
    """All that must be right about a tap but for its current."""
    yield _voltage(into, tap)
    yield _polarity(into, tap, turned)
    yield _ground(trial, into, tap)
    yield _connector(into, tap, into.name in resized(trial.plugged.rig))


def _voltage(into: Unit, tap: Tap) -> Answer:
    window, kind = window_v(into), (into.current or "dc").upper()
    gives = f"{tap.volts:g} V {tap.current.upper()}"
    wants = "not stated" if window is None else _window(*window)
    wanted = f"{wants} {kind if into.current else ''}".strip()
    if window is None or into.current is None:
        return _unknown("voltage", gives, wanted, "what voltage it needs")
    if takes_current(into, tap) is False:
        return _never("voltage", gives, wanted, f"'{into.name}' takes {kind}, {tap} {tap.gives} {tap.current.upper()}")
    if not takes_voltage(into, tap):
        return _never("voltage", gives, wanted, f"'{into.name}' takes {wants}, {tap} {tap.gives} {tap.volts:g} V")
    return Answer("voltage", gives, wanted, YES)


def _window(low: float, high: float) -> str:
    return f"{low:g} V" if low == high else f"{low:g} to {high:g} V"


def _polarity(into: Unit, tap: Tap, turned: bool) -> Answer:
    fit = takes_polarity(into, tap, turned)
    gives = f"{tap.polarity or 'not stated'}{', reversing lead' if turned else ''}"
    wants = into.polarity.value if into.polarity is not None else "not stated"
    if fit is None:
        who = f"'{into.name}'" if into.polarity is None else str(tap)
        return _unknown("polarity", gives, wants, f"the polarity of {who}")
    if fit:
        return Answer("polarity", gives, wants, YES)
    through = " through its reversing lead" if turned else ""
    return _never(
        "polarity",
        gives,
        wants,
        f"'{into.name}' is {wants}, {tap} is {tap.polarity}{through}: its supply would be reversed",
    )


def _ground(trial: Trial, into: Unit, tap: Tap) -> Answer:
    """Which pole is the audio ground: it matters where the outlet has other company."""
    stated = into.ground.value if into.ground is not None else "not stated"
    before = trial.out.ground.value if trial.out.ground is not None else "not stated"
    found = [each for each in trial.findings if each.kind.name == _POSITIVE and into.name in each.subject]
    wrong = next((each for each in found if each.level is Level.ERROR), None)
    if wrong is not None:
        return _never("ground pole", before, stated, wrong.message)
    if found:
        return _unknown("ground pole", before, stated, f"the ground pole of '{into.name}'")
    alone = "" if into.ground is not None and into.ground.value == "negative" else f"alone on {tap}"
    return Answer("ground pole", before, stated, YES, alone)


def _connector(into: Unit, tap: Tap, sized: bool) -> Answer:
    wants = str(into.inlet.connector) if into.inlet is not None else "not stated"
    gives, fit = str(tap.connector or "not stated"), takes_connector(into, tap)
    if fit or sized:
        return Answer("connector", gives, wants, YES, "through the size adaptor" if sized else "")
    if fit is None:
        return Answer("connector", gives, wants, WORK, "try the plug without power first", "try the DC plug")
    return Answer(
        "connector",
        gives,
        wants,
        WORK,
        "size adaptor, or a lead with that plug",
        f"a size adaptor or a DC lead for {wants}",
    )


def _outlet(trial: Trial, name: str, load: JointLoad | None) -> Answer:
    """Whether the outlet bears the current, and else which way will do."""
    into = trial.into
    draws = "not stated" if into.draws_ma is None else f"{into.draws_ma.value:g} mA"
    if into.starts_ma is not None:
        draws += f", {into.starts_ma.value:g} mA at switch-on"
    gives = name if load is None else f"{load.limit_ma:g} mA, {name}"
    if load is not None and load.unknown:
        return _unknown(
            "current", gives, draws, "what current " + " and ".join(f"'{each}'" for each in load.unknown) + " draws"
        )
    if load is not None and not exceeds(load.start_ma, 100, load.limit_ma):
        others = [each for each in load.units if each != into.name]
        beside = f", with {', '.join(others)}" if others else ""
        return Answer("current", gives, draws, YES, f"{share(load.known_pct)} %{beside}")
    if load is not None and not trial.weak:
        return Answer("current", gives, draws, NO, "too weak, too")
    if not trial.ways:
        wants = ", ".join(
            each for each in (_wants_v(into), into.polarity.value if into.polarity else "", draws) if each
        )
        why = f"no outlet that is free, or could be, suits it ({wants})"
        return Answer("current", gives, draws, NO, why, why)
    way = way_words(trial.ways[0])
    return Answer("current", gives, draws, WORK, way, way)


def _wants_v(into: Unit) -> str:
    window = window_v(into)
    return "" if window is None else _window(*window)


def way_words(way: FeedWay) -> str:
    """A way to feed a unit: `weir8.b2 (64 %), with 'weathervane' moved to mill8.a8 (100 %)`."""
    told = [f"{each} ({share(percent)} %)" for (_, each), percent in zip(way.taps, way.shares, strict=True)]
    moved = [f"'{name}' moved to {words}" for (name, _), words in zip(way.moved, told[1:], strict=True)]
    return f"feed it from {told[0]}" + (f", with {' and '.join(moved)}" if moved else "")


def _never(what: str, there: str, wanted: str, why: str) -> Answer:
    said = f"do not plug it in: {why}"
    return Answer(what, there, wanted, NO, said, said)


def _unknown(what: str, there: str, wanted: str, fact: str) -> Answer:
    return Answer(
        what, there, wanted, UNKNOWN, f"{fact} is not stated: measure before any plug goes in", f"{fact} is not stated"
    )
