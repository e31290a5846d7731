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
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.unit_needs import needs_of
from rigc.analysis.power.mends.other_feeds import moves
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.rig import Rig

KIND = Kind(
    "ac-on-dc",
    Level.ERROR,
    __doc__,
    "an AC unit on an AC outlet, a DC unit on a DC outlet",
    "arithmetic on stated values",
)


def ac_on_dc(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each unit on the wrong kind of current; can't-check where the unit does not say what it needs."""
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
        elif not fit:
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


CHECK = ac_on_dc
