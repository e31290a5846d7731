"""What has a mains lead of its own, or a supply, takes more of the mains than its own fuse carries.

Why it matters: the fuse blows in the first loud song. A maker fits none that is so small: the fuse, what the plate says, or the voltage is a slip,
and where it is the fuse, a wrong one is carried as its spare.
What to do: read the plate again, and correct what is wrong. A fuse is replaced by what the plate says, never by a larger one.
Of watts alone, without a power factor, the least current is taken: that of a power factor of 1.
Source: arithmetic on stated values: volt-amperes (or watts) / the lowest voltage that arrives.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.fuses import FittedFuse, Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primaries import Primaries
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.model.rig import Rig, Scenario
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import Figure

KIND = Kind(
    "overloaded-fuse",
    Level.WARNING,
    __doc__,
    "what a thing takes of the mains <= the rating of its fuse that is the right one there",
    "arithmetic on stated values",
)


def overloaded_fuse(rig: Rig, loads: MainsLoads, fuses: Fuses, primaries: Primaries) -> Iterator[Diagnostic]:
    """One finding for each fuse, of the first scenario in which it carries less. A fuse of a mains strip has a rule of its own."""
    arriving = {(each.scenario, each.supply): each.volts[0] for each in primaries.all}
    for fitted in fuses.all:
        taken = _taken(rig, loads, fitted.thing)
        if taken is None or not fitted.wanted:
            continue
        for scenario in _where(rig, fitted):
            assert scenario.mains is not None
            volts = arriving.get((scenario.name, fitted.thing), scenario.mains.low_v)
            if taken.amount / volts * 1000 > fitted.fuse.rating_ma.value * (1 + 1e-9):
                yield _told(fitted, taken, scenario, volts)
                break


def _where(rig: Rig, fitted: FittedFuse) -> Iterator[Scenario]:
    for scenario in rig.scenarios.values():
        if scenario.mains is not None and (not fitted.scenarios or scenario.name in fitted.scenarios):
            yield scenario


class _Taken(Record):
    """What a thing takes, in VA or W, in words, and where that is stated."""

    amount: float
    said: str
    span: Span | None


def _taken(rig: Rig, loads: MainsLoads, name: str) -> _Taken | None:
    thing = rig.units.get(name) or rig.instruments.get(name)
    stated = None if thing is None else thing.takes_va or thing.takes_w
    if stated is not None:
        return _Taken(stated.value, stated.typed, stated.span)
    load = loads.all.get(name)
    if load is None or not isinstance(load.volt_amperes, Figure):
        return None
    return _Taken(float(load.volt_amperes), f"{load.volt_amperes.text} VA", None)


def _told(fitted: FittedFuse, taken: _Taken, scenario: Scenario, volts: float) -> Diagnostic:
    rating = fitted.fuse.rating_ma
    amperes = taken.amount / volts
    return KIND.at(
        rating.span,
        f"'{fitted.thing}' takes {taken.said}, {short(amperes)} A at the {short(volts)} V of '{scenario.name}', and its fuse carries {rating.typed}",
        subject=(fitted.thing, scenario.name),
        label="its fuse",
        also=() if taken.span is None else (Label(taken.span, "it takes this"),),
        numbers=(Number("takes", amperes, "A"), Number("fuse", rating.value / 1000, "A")),
        help=f"read the plate of '{fitted.thing}' again, and correct its fuse or what it takes; put in no larger fuse than the plate says",
    )


CHECK = overloaded_fuse
