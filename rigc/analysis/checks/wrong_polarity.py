"""The polarity of an outlet's centre pin is not the unit's, and no reversing lead is stated; or one is, and it is wrong.

Why it matters: reversed polarity destroys most units at once.
What to do: use a reversing lead, mark both its ends, and check the plug with a meter before it goes in.
Source: arithmetic on stated values. No polarity is ever assumed: pedals mostly have the centre negative [common
practice, no source], other things mostly positive.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.power_assignment import PowerAssignment, Supplied
from rigc.analysis.power.outlet_fit import takes_polarity
from rigc.analysis.power.power_tap import Tap, outlets_named
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
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


def wrong_polarity(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each unit of the wrong polarity; can't-check for each unit and each supply that does not state it."""
    silent: dict[str, dict[str, Tap]] = {}
    for feed in power.feeds:
        unit, tap = rig.units[feed.unit], power.taps[feed.unit]
        fit = takes_polarity(unit, tap, feed.reversed)
        if fit is None and unit.polarity is None:
            yield KIND.cant_check(
                unit.declared,
                f"the polarity of '{unit.name}' is not stated; whether it may be plugged into {tap} can't be checked",
                subject=(unit.name,),
                help=f"measure it and write `polarity` in '{unit.name}'",
            )
        elif fit is None:
            silent.setdefault(tap.outlets[0].thing, {})[unit.name] = tap
        elif not fit:
            yield _told(feed, unit, tap)
    for supply, taps in silent.items():
        yield _unknown(rig, supply, taps)


def _unknown(rig: Rig, supply: str, taps: dict[str, Tap]) -> Diagnostic:
    return KIND.cant_check(
        rig.supplies[supply].declared,
        f"the polarity of {outlets_named(taps.values())} is not stated; whether {listed(taps)} may be plugged in "
        "can't be checked",
        subject=(supply, *taps),
        help=f"measure it and write `polarity` in '{supply}'",
    )


def _told(feed: Supplied, unit: Unit, tap: Tap) -> Diagnostic:
    wants = unit.polarity.value if unit.polarity is not None else ""
    through = " through a reversing lead" if feed.reversed else ""
    return KIND.at(
        feed.span,
        f"'{unit.name}' is {wants} and {tap} is {tap.polarity}{through}: its supply would be reversed",
        subject=(unit.name, *(str(port) for port in tap.outlets)),
        label="reversed polarity",
        also=(Label(unit.polarity.span, wants),) if unit.polarity is not None else (),
        help="delete `reversed`"
        if feed.reversed
        else "write `reversed` behind the outlet, and label both ends of that lead",
    )


CHECK = wrong_polarity
