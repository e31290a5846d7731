"""The pins of a plug-top supply fit no socket that homes of a scenario's country have, and no mains strip of the rig stands between.

Why it matters: what has a lead gets another lead for a few coins; a plug-top supply has none, and hangs on the adaptor that nobody brought.
What to do: carry an adaptor for it, or a mains strip whose sockets it fits: then the strip alone needs one. An adaptor converts no voltage.
Source: the two tables of `rigc/facts/countries.py`, which describe sockets in homes; ask the venue.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.facts.countries import FIRST, SECOND, country
from rigc.model.rig import Rig, Scenario
from rigc.model.things import PlugTop, Supply

KIND = Kind(
    "foreign-plug",
    Level.REMARK,
    __doc__,
    "a plug-top supply that goes into the wall fits the sockets of each scenario's country in one of two tables",
    f"{FIRST}; {SECOND}",
)


def foreign_plug(rig: Rig, loads: MainsLoads) -> Iterator[Diagnostic]:
    """One finding for each supply and country, where a table has it. One that is plugged into a mains strip of the rig fits that."""
    on_strips = {name for name, _, _ in rig.power.plugged}
    for name in loads.all:
        supply = rig.supplies[name]
        top = supply.plug_top
        if top is None or not top.pins or name in on_strips:
            continue
        told: set[str] = set()
        for scenario in rig.scenarios.values():
            sockets = _sockets(scenario)
            if scenario.country is not None and sockets and top.pins not in sockets and scenario.country not in told:
                told.add(scenario.country)
                yield _told(supply, top, scenario, sockets)


def _sockets(scenario: Scenario) -> str:
    """The types that either table has for its country."""
    there = None if scenario.country is None else country(scenario.country)
    rows = () if there is None else (there.first, there.second)
    return "".join(dict.fromkeys("".join(row.plugs for row in rows if row is not None)))


def _told(supply: Supply, top: PlugTop, scenario: Scenario, sockets: str) -> Diagnostic:
    return KIND.at(
        top.span,
        f"'{supply.name}' is a plug of type {top.pins}, and {scenario.country}, where '{scenario.name}' is, has {' and '.join(sockets)}",
        subject=(supply.name, scenario.name),
        label="its pins",
        also=(Label(scenario.declared, "plays here"),),
        help=f"carry an adaptor, or a mains strip for it: write `{supply.name} plug into NAME` in the power block",
    )


CHECK = foreign_plug
