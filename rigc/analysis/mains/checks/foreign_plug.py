"""The pins of a plug-top supply fit no socket that homes of a scenario's country have, and no mains strip of the rig stands between.

Why it matters: what has a lead gets another lead for a few coins; a plug-top supply has none, and hangs on the adaptor that nobody brought.
What to do: carry an adaptor for it, or a mains strip whose sockets it fits: then the strip alone needs one. An adaptor converts no voltage.
Source: the two tables of `rigc/facts/countries.py`, which describe sockets in homes; ask the venue.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.facts.countries import FIRST, SECOND, country
from rigc.model.rig import Rig, Scenario
from rigc.model.things import PlugTop

KIND = Kind(
    "foreign-plug",
    Level.REMARK,
    __doc__,
    "a plug-top supply that goes into the wall fits the sockets of each scenario's country in one of two tables",
    f"{FIRST}; {SECOND}",
)


def foreign_plug(rig: Rig, loads: MainsLoads) -> Iterator[Diagnostic]:
    """One finding for all supplies with the same pins in a country, where a table has it. One that is plugged into a mains strip of the rig fits that."""
    on_strips = {name for name, _, _ in rig.power.plugged}
    alike: dict[str, list[tuple[str, PlugTop]]] = {}
    for name in loads.all:
        top = rig.supplies[name].plug_top
        if top is not None and top.pins and name not in on_strips:
            alike.setdefault(top.pins, []).append((name, top))
    for pins, tops in alike.items():
        told: set[str] = set()
        for scenario in rig.scenarios.values():
            sockets = _sockets(scenario)
            if scenario.country is not None and sockets and pins not in sockets and scenario.country not in told:
                told.add(scenario.country)
                yield _told(tops, scenario, sockets)


def _sockets(scenario: Scenario) -> str:
    """The types that either table has for its country."""
    there = None if scenario.country is None else country(scenario.country)
    rows = () if there is None else (there.first, there.second)
    return "".join(dict.fromkeys("".join(row.plugs for row in rows if row is not None)))


def _told(tops: list[tuple[str, PlugTop]], scenario: Scenario, sockets: str) -> Diagnostic:
    names, first = [name for name, _ in tops], tops[0][1]
    one = len(tops) == 1
    return KIND.at(
        first.span,
        f"{listed(names)} {'is a plug' if one else 'are plugs'} of type {first.pins}, and {scenario.country}, where '{scenario.name}' is, "
        f"has {' and '.join(sockets)}",
        subject=(*names, scenario.name),
        label="its pins",
        also=(*(Label(top.span, "and its pins") for _, top in tops[1:]), Label(scenario.declared, "plays here")),
        help=f"carry an adaptor{'' if one else ' for each'}, or a mains strip for {'it' if one else 'them'}: write "
        f"`{', '.join(names)} plug into NAME` in the power block",
    )


CHECK = foreign_plug
