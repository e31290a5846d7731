"""The plug of a unit's power lead does not fit: another barrel size or kind of connector at outlet and inlet.

Why it matters: a 2.1 mm plug does not enter over a 2.5 mm pin; a 2.5 mm plug goes over a 2.1 mm pin and loses contact
at every step.
What to do: use an adaptor of the right size (state it: `Y1 size for ...`), or a lead with the right plug at each end.
Source: arithmetic on stated values. A unit's captive lead has the connector that its inlet states.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_fit import resized, takes_connector
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap, outlets_named
from rigc.analysis.leads.lead_numbers import highest_adaptor
from rigc.analysis.power.mends.other_feeds import moves, together
from rigc.analysis.power.mends.same_cause import remaining, same_cause, whole_connectors
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Connector
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.wishes import LeadFacts

KIND = Kind(
    "unfit-power-plug",
    Level.ERROR,
    __doc__,
    "one connector at outlet and inlet, else an adaptor or a lead with both plugs is stated",
    "arithmetic on stated values",
)


def unfit_power_plug(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for the units of one outlet, or of all outlets of a supply, whose plugs do not fit and are alike; can't-check for each supply that states no connector there."""
    adapted = resized(rig)
    silent: dict[str, dict[str, Tap]] = {}
    unfit = []
    plugged: dict[str, list[LeadFacts]] = {}
    for each in rig.lead_wishes.leads:
        if each.plugs is not None:
            plugged.setdefault(each.end.thing, []).append(each)
    for feed in power.feeds:
        unit, tap = rig.units[feed.unit], power.taps[feed.unit]
        lead = next((each for each in plugged.get(feed.unit, ()) if each.start in feed.outlets), None)
        if lead is not None:
            yield from _plugs(rig, lead, unit, tap)
            continue
        fit = takes_connector(unit, tap)
        if fit is False and unit.name not in adapted:
            unfit.append((feed, unit.inlet and (str(unit.inlet.connector), unit.inlet.captive_mm is not None)))
        elif fit is None and unit.inlet is not None:
            silent.setdefault(tap.outlets[0].thing, {})[unit.name] = tap
    whole = whole_connectors(power, unfit)
    for feeds in whole:
        yield _whole_supply(rig, power, feeds)
    for feeds in same_cause(remaining(unfit, whole)):
        yield _told(rig, power, limits, feeds)
    for supply, taps in silent.items():
        yield _unknown(rig, supply, taps)


def _unknown(rig: Rig, supply: str, taps: dict[str, Tap]) -> Diagnostic:
    return KIND.cant_check(
        rig.supplies[supply].declared,
        f"the connector of {outlets_named(taps.values())} is not stated; whether it fits {listed(taps)} can't be checked",
        subject=(supply, *taps),
        help=f"look at the outlets and write it in '{supply}', for example `connector barrel 5.5 x 2.1 mm`",
    )


def _whole_supply(rig: Rig, power: PowerAssignment, feeds: tuple[Supplied, ...]) -> Diagnostic:
    """Whatever these outlets of a supply feed has another connector."""
    names, taps = tuple(feed.unit for feed in feeds), [power.taps[feed.unit] for feed in feeds]
    inlets = {name: jack for name in names if (jack := rig.units[name].inlet) is not None}
    supply, plug = taps[0].outlets[0].thing, next(iter(inlets.values())).connector
    return KIND.at(
        rig.supplies[supply].declared,
        f"{outlets_named(taps)} are {taps[0].connector}, and all that they feed takes {plug}: {listed(names)}",
        subject=(supply, *names),
        label="the plugs do not fit",
        also=tuple(Label(feed.span, "fed from there") for feed in feeds[:3]),
        asks_for=tuple(f"a plug kind in the stock that fits '{name}.{jack.name}'" for name, jack in inlets.items()),
        mends=_adaptors(rig, names),
        help=f"look at the outlets of '{supply}', and correct `connector` there if they are {plug}",
    )


def _told(rig: Rig, power: PowerAssignment, limits: LoadLimits, feeds: tuple[Supplied, ...]) -> Diagnostic:
    names, tap = tuple(feed.unit for feed in feeds), power.taps[feeds[0].unit]
    inlets = [jack for name in names if (jack := rig.units[name].inlet) is not None]
    ports = [f"{name}.{jack.name}" for name in names if (jack := rig.units[name].inlet) is not None]
    one, plug = len(names) == 1, inlets[0].connector
    thing = "captive lead" if inlets[0].captive_mm is not None else "inlet"
    whose = f"its {thing} is" if one else f"their {thing}s are"
    return KIND.at(
        feeds[0].span,
        f"{listed(names)} {'does' if one else 'do'} not plug into {tap}: {whose} {plug}, the outlet {tap.connector}",
        subject=(*names, *(str(port) for port in tap.outlets)),
        label="the plug does not fit" if one else "the plugs do not fit",
        also=tuple(Label(each.span, f"{each.connector}") for each in inlets),
        asks_for=tuple(f"a plug kind in the stock that fits '{port}'" for port in ports),
        mends=(
            *_adaptors(rig, names),
            *(moves(rig, power, names[0], limits)[:1] if one else together(rig, power, names, limits)),
        ),
        otherwise=f"no move or exchange does it: use a lead with a plug for {plug} at one end and for {tap.connector} at the other",
    )


def _plugs(rig: Rig, lead: LeadFacts, unit: Unit, tap: Tap) -> Iterator[Diagnostic]:
    """The stated plugs of a lead, each against the jack that it goes into."""
    for at, (port, name) in enumerate(zip((lead.start, lead.end), lead.plugs or (), strict=False)):
        plug = rig.stock.plugs.get(name)
        inlet = unit.inlet.connector if unit.inlet is not None else None
        jack = tap.connector if port in tap.outlets else inlet
        if plug is not None and plug.fits and jack is not None and jack not in plug.fits:
            sizes = " or ".join(str(each) for each in plug.fits)
            yield KIND.at(
                lead.span,
                f"plug '{name}' of lead {lead.mark} fits {sizes}, not {port} ({jack})",
                subject=(unit.name, lead.mark),
                label="the plug does not fit",
                mends=_plug_of_stock(rig, lead, at, jack),
                otherwise=f"state a plug that fits {jack}",
            )


def _adaptors(rig: Rig, names: tuple[str, ...]) -> tuple[Mend, ...]:
    """An adaptor of plug size before each."""
    lines = [f"Y{number} size for {name}" for number, name in enumerate(names, highest_adaptor(rig) + 1)]
    words = f"put a size adaptor before {listed(names)}: write {' and '.join(f'`{line}`' for line in lines)}"
    return (Mend(words, tuple(AddTo("leads", "", line) for line in lines)),)


def _plug_of_stock(rig: Rig, lead: LeadFacts, at: int, jack: Connector) -> tuple[Mend, ...]:
    """The other plugs that fit the jack, in place of the one that is stated."""
    if len(lead.plug_spans) <= at:
        return ()
    fit = [name for name, plug in rig.stock.plugs.items() if jack in plug.fits]
    return tuple(
        Mend(f"put plug '{name}' on that end of {lead.mark}", (Replace(lead.plug_spans[at], name),)) for name in fit[:2]
    )


CHECK = unfit_power_plug
