"""A unit that needs AC stands on a DC outlet, or the reverse.

Why it matters: a DC unit on AC is fed the wrong way round half of the time; an AC unit on DC gets nothing through its
transformer or only one of its rails.
What to do: feed an AC unit from a winding or a brick of its own.
Source: arithmetic on stated values.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_fit import takes_current
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import outlets_named
from rigc.analysis.feeds.unit_needs import needs_of
from rigc.analysis.power.mends.other_feeds import moves
from rigc.analysis.power.mends.same_cause import whole_lines
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "ac-on-dc",
    Level.ERROR,
    __doc__,
    "an AC unit on an AC outlet, a DC unit on a DC outlet",
    "arithmetic on stated values",
)


def ac_on_dc(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each unit on the wrong kind of current, or for each line of outlets of which all units are; can't-check where
    the unit does not say what it needs."""
    wrong = [(feed, rig.units[feed.unit].current) for feed in power.feeds if _wrong(rig, power, feed)]
    whole = whole_lines(power, wrong)
    for feeds in whole:
        yield _whole_line(rig, power, feeds)
    told = {feed.unit for feeds in whole for feed in feeds}
    for feed in power.feeds:
        unit, tap = rig.units[feed.unit], power.taps[feed.unit]
        fit = takes_current(unit, tap)
        gives = tap.current.upper() or "AC and DC"
        if fit is None:
            yield KIND.cant_check(
                unit.declared,
                f"'{unit.name}' does not say whether it needs AC or DC; whether {tap} ({gives}) is right can't be checked",
                subject=(unit.name,),
                help=f"write `needs` in '{unit.name}'",
                wants=(needs_of(unit.name),),
            )
        elif not fit and unit.name not in told:
            needs = (unit.current or "").upper()
            yield KIND.at(
                feed.span,
                f"'{unit.name}' needs {needs}, {tap} {tap.gives} {gives}",
                subject=(unit.name, *(str(port) for port in tap.outlets)),
                label=f"not {needs}",
                also=(Label(unit.volts.span, f"needs {needs}"),) if unit.volts is not None else (),
                mends=moves(rig, power, unit.name, limits),
                otherwise=f"no move or exchange does it: add {'an AC' if needs == 'AC' else 'a DC'} supply for it",
            )


def _wrong(rig: Rig, power: PowerAssignment, feed: Supplied) -> bool:
    return takes_current(rig.units[feed.unit], power.taps[feed.unit]) is False


def _whole_line(rig: Rig, power: PowerAssignment, feeds: tuple[Supplied, ...]) -> Diagnostic:
    """Whatever these outlets of a supply feed needs the other kind of current."""
    taps = [power.taps[feed.unit] for feed in feeds]
    names, outlets = [feed.unit for feed in feeds], outlets_named(taps)
    needs, gives = (rig.units[names[0]].current or "").upper(), taps[0].current
    supply = taps[0].outlets[0].thing
    return KIND.at(
        taps[0].settings[0].volts.span,
        f"{outlets} give {gives.upper()}, and all that they feed needs {needs}: {listed(names)}",
        subject=(supply, *names),
        label=f"not {needs}",
        also=tuple(Label(feed.span, "fed from there") for feed in feeds[:3]),
        help=f"read the plate of '{supply}', and correct `{gives}` there if it gives {needs}; or feed them from {'an AC' if needs == 'AC' else 'a DC'} supply",
    )


CHECK = ac_on_dc
