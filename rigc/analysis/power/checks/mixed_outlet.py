"""Units share an outlet, or outlets with one common, that should not: digital with analogue, high gain with any other, or
the two sides of an isolator.

Why it matters: a digital unit's clock current is heard in its neighbour; gain lifts whatever the shared ground brings; and a
shared ground joins again what a transformer, a relay or an opto-coupler keeps apart.
What to do: give one of them an outlet of its own.
Source: common practice, no source; the isolator by physics: what it separates is joined by the common.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.leads.leads import Leads
from rigc.analysis.power.companies import shorted
from rigc.analysis.power.grounds_apart import GroundsApart, grounds_apart
from rigc.analysis.power.mends.other_feeds import moves
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.record import Record

KIND = Kind(
    "mixed-outlet",
    Level.WARNING,
    __doc__,
    "no outlet or common joins digital with analogue, high gain with others, or both sides of an isolator",
    "common practice, no source; physics for isolators",
)


class _Group(Record):
    """The units that one return joins: those of an outlet, or of all outlets with one common."""

    outlets: tuple[Port, ...]
    common: str | None
    units: tuple[Unit, ...]

    def __str__(self) -> str:
        names = listed(self.outlets)
        return names if len(self.outlets) == 1 else f"the common '{self.common}' of {names}"


def mixed_outlet(
    rig: Rig, power: PowerAssignment, leads: Leads, grounds: GroundSystems, limits: LoadLimits
) -> Iterator[Diagnostic]:
    """At most one finding for each outlet or common."""
    groups = _groups(rig, power)
    short = shorted(rig, power) if groups else frozenset()
    states = [grounds_apart(leads, state) for state in grounds.states] if groups else []
    for group in groups:
        if any(unit.name in short for unit in group.units):
            continue  # told as shared-positive-ground
        fault = _isolator(group, states) or _mixture(group)
        unsaid = [unit.name for unit in group.units if not unit.flags & {"digital", "analogue"}]
        if fault:
            yield _told(rig, power, limits, states, group, fault)
        elif unsaid:
            yield _unsaid(rig, group, unsaid)


def _isolator(group: _Group, states: list[GroundsApart]) -> str:
    for pair in combinations([unit.name for unit in group.units], 2):
        if any(state.between(*pair) for state in states):
            return f"an isolator stands between {listed(pair)}; {group} joins their grounds again"
    return ""


def _mixture(group: _Group) -> str:
    """What is wrong with the group's kinds; empty if nothing that is known."""
    loud = [unit.name for unit in group.units if "high gain" in unit.flags]
    digital = [unit.name for unit in group.units if "digital" in unit.flags]
    analogue = [unit.name for unit in group.units if "analogue" in unit.flags and unit.name not in digital]
    if loud:
        rest = [unit.name for unit in group.units if unit.name != loud[0]]
        return f"'{loud[0]}' has high gain and shares {group} with {listed(rest)}"
    if digital and analogue:
        words = "is digital and shares" if len(digital) == 1 else "are digital and share"
        return f"{listed(digital)} {words} {group} with {listed(analogue)}"
    return ""


def _groups(rig: Rig, power: PowerAssignment) -> list[_Group]:
    """Outlets in use by their common (each isolated one for itself) that feed two units or more; isolated inputs join nothing."""
    outlets: dict[tuple[str, str], list[Port]] = {}
    for port, load in power.loads.items():
        outlet = outlet_at(rig, port)
        if outlet is not None and load.units:
            key = (port.thing, f"common {outlet.common}" if outlet.common is not None else port.jack)
            outlets.setdefault(key, []).append(port)
    groups = []
    for ports in outlets.values():
        names = dict.fromkeys(name for port in ports for name in power.loads[port].units)
        units = tuple(u for name in names if (u := rig.units[name]).ground is None or u.ground.value != "isolated")
        first = outlet_at(rig, ports[0])
        if len(units) > 1:
            groups.append(_Group(tuple(ports), first.common if first is not None else None, units))
    return groups


def _told(
    rig: Rig, power: PowerAssignment, limits: LoadLimits, states: list[GroundsApart], group: _Group, message: str
) -> Diagnostic:
    feed = power.of(group.units[-1].name)
    return KIND.at(
        feed.span if feed is not None else group.units[-1].declared,
        message,
        subject=(*(unit.name for unit in group.units), *(str(port) for port in group.outlets)),
        label="one common ground",
        mends=_mends(rig, power, limits, states, group),
        otherwise="no move or exchange does it: add a supply, or accept this",
    )


def _mends(
    rig: Rig, power: PowerAssignment, limits: LoadLimits, states: list[GroundsApart], group: _Group
) -> tuple[Mend, ...]:
    """A unit moved away, without which the others may stay together."""
    found: list[Mend] = []
    for unit in group.units:
        left = group.replace(units=tuple(each for each in group.units if each is not unit))
        if not (_isolator(left, states) or _mixture(left)):
            away = moves(rig, power, unit.name, limits, lambda way: not set(way.outlets) & set(group.outlets))
            found += away[:1]
    return tuple(found[:2])


def _unsaid(rig: Rig, group: _Group, unsaid: list[str]) -> Diagnostic:
    do = "does" if len(unsaid) == 1 else "do"
    return KIND.cant_check(
        rig.units[unsaid[0]].declared,
        f"{listed(unsaid)} on {group} {do} not say `digital` or `analogue`; whether the outlet is mixed can't be checked",
        subject=tuple(unsaid),
        help=f"write `digital` or `analogue` in {listed(unsaid)}",
    )


CHECK = mixed_outlet
