"""A set of units in each other's way -> changes of the source that might give them all an outlet, the smallest kinds first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.analysis.feeds.choice.unfed import Unfed
from rigc.analysis.feeds.load_limits import LoadLimits, load_limits
from rigc.analysis.feeds.outlet_bearing import asked_rating_ma, bears, drawn_ma, unknown_start
from rigc.analysis.feeds.outlet_fit import POLAR, fits, resized, reversing
from rigc.analysis.feeds.outlet_sharing import mixes
from rigc.analysis.feeds.power_tap import Tap, tap
from rigc.analysis.feeds.series_midpoint import shared
from rigc.analysis.leads.lead_numbers import highest_adaptor
from rigc.analysis.power.mends.feed_edits import fed_from, restated
from rigc.diagnostics.mend import AddTo, Delete, Edit, Replace
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import joined, listed
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Rating, Supply, Unit
from rigc.model.wishes import Adaptor, Feed
from rigc.record import Record


class Change(Record):
    """One change: what to do in words, the rig as it were then, and the edits that make it (none where it is a measurement or a purchase)."""

    words: str
    rig: Rig
    edits: tuple[Edit, ...] = ()


def _measured(rig: Rig, _problem: OutletProblem, limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """A start-up current measured: then the rule for digital units holds no longer."""
    for name in unfed.units:
        unit = rig.units.get(name)
        if (
            unit is not None
            and unknown_start(unit)
            and unit.draws_ma is not None
            and limits.digital_pct < limits.load_pct
        ):
            changed = rig.replace(units={**rig.units, name: unit.replace(starts_ma=unit.draws_ma)})
            yield Change(f"measure the start-up current of '{name}' and write it in its block: starts ___ mA", changed)


def _reversing(rig: Rig, problem: OutletProblem, _limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """A reversing lead for a unit of the other polarity, or for all where they want the same."""
    if unfed.turned and len(unfed.units) > 1:
        lines = [f"{name} reversed" for name in unfed.units if name not in problem.turned]
        written = joined(f"`{line}`" for line in lines)
        yield Change(
            f"feed {listed(unfed.units)} through reversing leads and mark both ends of each: write {written}",
            _wishing(rig, turned=(*rig.power.turned, *unfed.units)),
            tuple(AddTo("power", "", line) for line in lines),
        )
    for name in unfed.units:
        unit = rig.units.get(name)
        if unit is not None and unit.polarity is not None and name not in problem.turned:
            yield Change(
                f"feed '{name}' through a reversing lead and mark both its ends: write `{name} reversed`",
                _wishing(rig, turned=(*rig.power.turned, name)),
                (AddTo("power", "", f"{name} reversed"),),
            )


def _sized(rig: Rig, problem: OutletProblem, _limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """An adaptor of plug size."""
    for name in unfed.units:
        unit = rig.units.get(name)
        if unit is not None and unit.inlet is not None and name not in problem.sized:
            mark = fresh_adaptor(rig)
            yield _with_adaptor(rig, unit, mark, f"put a size adaptor before '{name}': write `{mark} size for {name}`")


def _lower(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    """Which outlet of a series pair is the lower one: the outlets that share its return are free for others then."""
    for at, feed in enumerate(rig.power.feeds):
        for port in feed.outlets if feed.how == "series" else ():
            if port != feed.lower and shared(rig, port) is not None:
                feeds = (*rig.power.feeds[:at], feed.replace(lower=port), *rig.power.feeds[at + 1 :])
                words = f"make '{port}' the lower outlet of the series pair of {listed(feed.units)}"
                yield Change(words, _wishing(rig, feeds=feeds), restated(feed, lower=port))


def sized_and_reversing(rig: Rig, problem: OutletProblem, unfed: Unfed) -> Iterator[Change]:
    """Both for one unit, where neither alone will do."""
    for name in unfed.units:
        unit = rig.units.get(name)
        if unit is None or unit.inlet is None or unit.polarity is None or {name} & (problem.sized | problem.turned):
            continue
        mark = fresh_adaptor(rig)
        words = f"feed '{name}' through a reversing lead with a size adaptor: write `{name} reversed` and `{mark} size for {name}`"
        sized = _with_adaptor(rig, unit, mark, words)
        turned = _wishing(sized.rig, turned=(*rig.power.turned, name))
        yield sized.replace(rig=turned, edits=(*sized.edits, AddTo("power", "", f"{name} reversed")))


def _with_adaptor(rig: Rig, unit: Unit, mark: str, words: str) -> Change:
    adaptors = (*rig.lead_wishes.adaptors, Adaptor(mark, "size", unit.name, unit.declared))
    changed = rig.replace(lead_wishes=rig.lead_wishes.replace(adaptors=adaptors))
    return Change(words, changed, (AddTo("leads", "", f"{mark} size for {unit.name}"),))


def fresh_adaptor(rig: Rig) -> str:
    """A number for an adaptor that none and no Y lead bears or bore."""
    return f"Y{highest_adaptor(rig) + 1}"


def _more_supplies(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    for name in rig.supplies:
        if rig.power.others and name not in rig.power.others and rig.power.others_span is not None:
            yield Change(
                f"let rigc use '{name}' too: add it to `others from`",
                _wishing(rig, others=(*rig.power.others, name)),
                (AddTo("power", "", f"others from {name}"),),
            )


def _fewer_kept(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    for at, (count, supply, span) in enumerate(rig.power.spare):
        rest = (*rig.power.spare[:at], *rig.power.spare[at + 1 :])
        for fewer in range(count - 1, -1, -1):
            of = f" of {supply}" if supply else ""
            edit = Replace(span, f"spare {fewer}{of}") if fewer else Delete(span)
            yield Change(
                f"keep {fewer or 'no'} outlet{'s' * (fewer != 1)}{of} free",
                _wishing(rig, spare=(*rest, (fewer, supply, span)) if fewer else rest),
                (edit,),
            )


def _fewer_reserved(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    for at, (volts, *_, text) in enumerate(rig.power.reserved):
        rest = (*rig.power.reserved[:at], *rig.power.reserved[at + 1 :])
        words = f"reserve no outlet for '{text or 'a unit to come'}'"
        yield Change(words, _wishing(rig, reserved=rest), (Delete(volts.span),))


def _not_alone(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    for name, span in zip(rig.power.alone, rig.power.alone_at, strict=False):
        if name in unfed.units:
            rest = _wishing(rig, alone=tuple(each for each in rig.power.alone if each != name))
            if rig.units[name] in used_units(rest):  # nothing else may name it
                yield Change(f"let '{name}' share: delete `{name} alone`", rest, (Delete(span),))


def _sharing(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """Two of the set share, where that makes no new trouble."""
    for one, other in combinations([name for name in unfed.units if name in rig.units], 2):
        if not mixes((rig.units[one], rig.units[other])):
            yield Change(
                f"write `{one}, {other} may share`",
                _wishing(rig, may_share=(*rig.power.may_share, (one, other))),
                (AddTo("power", "", f"{one}, {other} may share"),),
            )


def _unpinned(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    """A stated feed given up: its unit finds another outlet."""
    if rig.power.others:
        for at, feed in enumerate(rig.power.feeds):
            rest = (*rig.power.feeds[:at], *rig.power.feeds[at + 1 :])
            changed = _wishing(rig, feeds=rest)
            if all(rig.units[name] in used_units(changed) for name in feed.units if name in rig.units):
                yield Change(f"don't state an outlet for {listed(feed.units)}", changed, (Delete(feed.span),))


def _in_parallel(rig: Rig, problem: OutletProblem, limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """Two isolated outlets of one supply and one voltage, the first such pair of each kind, for a unit of the set."""
    for name in reversed(unfed.units):
        if name not in rig.units:
            continue
        for way in _pairs(rig, problem):
            unit = rig.units[name]
            good = fits(unit, way, name in problem.turned, name in problem.sized) and bears(way, (unit,), limits)
            if good and unit.draws_ma is not None:
                feed = Feed((name,), way.outlets, way.settings[0].volts, "parallel", False, unit.declared)
                share = f"{drawn_ma(unit):g} of {way.limit_ma:g} mA, {percentage(way.percent(drawn_ma(unit)))}"
                words = f"feed '{name}' from {joined(way.outlets)} in parallel, if their maker allows it ({share})"
                yield Change(words, _wishing(rig, feeds=(*rig.power.feeds, feed)), fed_from(rig, name, way))


def _pairs(rig: Rig, problem: OutletProblem) -> Iterator[Tap]:
    seen: set[object] = set()
    free = [site for site in problem.sites if not site.tenants and not site.common]
    for one, other in combinations(free, 2):
        kind = one.outlet.thing, one.look, other.look
        if one.outlet.thing == other.outlet.thing and one.look == other.look and kind not in seen:
            seen.add(kind)
            for way, again in zip(one.taps, other.taps, strict=True):
                yield tap(rig, (one.outlet, other.outlet), "parallel", (*way.settings, *again.settings))


def one_more(rig: Rig, unfed: Unfed) -> Iterator[Change]:
    """A supply with one outlet more, of the smallest round rating that bears a unit of the set as the rules of practice want it, isolated
    and of its plug."""
    limits = load_limits(rig)
    for name in unfed.units:
        unit = rig.units.get(name)
        if unit is None or unit.volts is None or unit.current is None:
            continue
        milliamps = asked_rating_ma(unit, limits)
        connector = unit.inlet.connector if unit.inlet is not None and name not in resized(rig) else None
        pole = unit.polarity.value if unit.polarity is not None and name not in reversing(rig) else None
        made = Outlet(
            "more",
            (Rating(unit.volts, unit.current, Fact(milliamps, "", unit.declared), unit.declared),),
            None,
            connector,
            pole,
            None,
            None,
            None,
            unit.declared,
        )
        extra = Supply("supply", "one-more", "", unit.declared, outlets=(made,))
        changed = rig.replace(supplies={**rig.supplies, "one-more": extra})
        polar = connector is None or connector.kind in POLAR
        kind = ", ".join(filter(None, (pole if polar and unit.current == "dc" else "", str(connector or ""))))
        words = f"add a supply with an outlet of {milliamps:g} mA at {unit.volts.value:g} V {unit.current.upper()}"
        words += f" ({kind})" if kind else ""
        yield Change(f"{words} for '{name}'", _wishing(changed, others=(*rig.power.others, "one-more")))


def _wishing(rig: Rig, **wishes: object) -> Rig:
    return rig.replace(power=rig.power.replace(**wishes))  # type: ignore[no-any-return]


KINDS = (
    _measured,
    _reversing,
    _sized,
    _lower,
    _more_supplies,
    _fewer_kept,
    _fewer_reserved,
    _not_alone,
    _sharing,
    _unpinned,
    _in_parallel,
)
