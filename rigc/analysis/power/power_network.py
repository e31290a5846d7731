"""Feeds, leads and grounds -> the d.c. network that they are: volts at each inlet, current in each return and each shield:
`marl.volts.least`, `marl.volts.most`, `marl.return`.

Outlets are ideal sources, units take what they draw whatever the voltage, and their audio grounds are joined by the shields of their leads. Only DC
is solved. Where the legs of a Y part is not stated: they are reckoned to lie together as far as they can.
"""

from __future__ import annotations

from collections.abc import Container
from functools import cached_property

from rigc.analysis.feeds.outlet_fit import takes_polarity
from rigc.analysis.feeds.outlet_sharing import positive
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap, outlet_at
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.states import GroundState
from rigc.analysis.power.circuit import Circuit, Node, Solution
from rigc.analysis.power.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.y_stretches import y_stretches
from rigc.facts.conductors import SHIELD_OHM, UNKNOWN_LEAD_OHM
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import EARTH, GROUND, GroundLink, Pole
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.means import found
from rigc.traced.units import FINE_MILLIAMPS, FINE_VOLTS

_KIRCHHOFF = "physics: Kirchhoff's laws"


class InletVolts(Record):
    """A unit's inlet: the least volts, with all units drawing what they draw, and the most, with none drawing; the current in
    mA that comes back through the negative conductors of its leads, in the state in which that is most.

    `known` is whether each current, cable and length that it leans on is stated.
    """

    unit: str
    least_v: Figure
    most_v: Figure
    returned: Figure
    known: bool


class ReturnFlow(Record):
    """The current that comes back through the negative conductor of a lead, in mA; below 0 it flows the other way. `within` a series
    pair it is on its way to the other outlet."""

    mark: str
    outlet: Port
    unit: str
    ma: float
    within: bool


class ShieldFlow(Record):
    """The supply current through the shields of the leads `marks` that join the grounds of two things, in mA."""

    marks: tuple[str, ...]
    things: tuple[str, str]
    ma: float
    link: GroundLink


class SolvedState(Record):
    """The currents where the grounds are as in `scenarios` (none where the rig has no scenarios). `drawn_ma` is what all units draw together: more
    than that flows nowhere unless sources work against each other through copper."""

    scenarios: tuple[str, ...]
    returns: tuple[ReturnFlow, ...]
    shields: tuple[ShieldFlow, ...]
    drawn_ma: float

    @cached_property
    def returned_ma(self) -> dict[str, float]:
        """What flows back through the leads of each unit together; of a series pair, through that of the lower outlet."""
        found: dict[str, float] = {}
        for flow in self.returns:
            found[flow.unit] = found.get(flow.unit, 0.0) + (0.0 if flow.within else flow.ma)
        return found


class PowerNetwork(Record):
    """Inlets in the order of the feeds, with the least volts of all states; the currents of each state."""

    inlets: tuple[InletVolts, ...]
    states: tuple[SolvedState, ...]

    @cached_property
    def _by_unit(self) -> dict[str, InletVolts]:
        return {each.unit: each for each in self.inlets}

    def of(self, unit: str) -> InletVolts | None:
        """The volts at a unit's inlet; None where it has no DC feed."""
        return self._by_unit.get(unit)


def power_network(rig: Rig, power: PowerAssignment, drops: LeadDrops, grounds: GroundSystems) -> PowerNetwork:
    """The network solved in each state of grounds."""
    fed = tuple(feed for feed in power.feeds if feed.current == "dc" and _sound(power.taps[feed.unit]))
    wiring = dc_circuit(rig, power, drops, fed)
    solved = [(state, _shielded(wiring, rig, fed, state).solved()) for state in grounds.states]
    idle = wiring.idle()
    drawn = sum(fact.value for feed in fed if (fact := rig.units[feed.unit].draws_ma) is not None)
    states = tuple(_state(power, drops, state, each, drawn) for state, each in solved)
    legs: dict[str, list[LeadDrop]] = {}
    for drop in drops.all.values():
        legs.setdefault(drop.unit, []).append(drop)
    least = {feed.unit: min(_volts(each.volts, feed.unit) for _, each in solved) for feed in fed}
    return PowerNetwork(
        tuple(
            _inlet_volts(power, drops, legs, feed, least[feed.unit], _volts(idle, feed.unit), states) for feed in fed
        ),
        states,
    )


def dc_circuit(rig: Rig, power: PowerAssignment, drops: LeadDrops, fed: tuple[Supplied, ...]) -> Circuit:
    """The network of these feeds, without any shields."""
    circuit = Circuit()
    ports = dict.fromkeys(port for feed in fed for port in power.taps[feed.unit].outlets)
    for port in ports:
        load = power.loads[port]
        circuit.source((port, "+"), _return(rig, port), load.volts)
    legs = _legs(drops, fed)
    for port, each in legs.items():
        _wire(circuit, rig, power, port, each)
    for feed in fed:
        draws = rig.units[feed.unit].draws_ma
        circuit.load((feed.unit, "+"), (feed.unit, "-"), 0.0 if draws is None else draws.value / 1000)
    return circuit


def _shielded(wiring: Circuit, rig: Rig, fed: tuple[Supplied, ...], state: GroundState) -> Circuit:
    """The network with the shields of a state of grounds."""
    circuit, names = wiring.copy(), {feed.unit for feed in fed}
    for at, link in enumerate(state.links):
        if link.kind != "common" and link.unsure is None:
            ohm = SHIELD_OHM.value * max(1, len(link.marks))
            circuit.resistor(("shield", at), _ground(rig, names, link.ends[0]), _ground(rig, names, link.ends[1]), ohm)
    return circuit


def _wire(circuit: Circuit, rig: Rig, power: PowerAssignment, port: Port, legs: list[LeadDrop]) -> None:
    """The conductors of an outlet's leads. Several are a Y, whose legs lie together as far as they can."""
    starts: dict[str, Node] = {"+": (port, "+"), "-": _return(rig, port)}
    left = {leg.mark: leg for leg in legs}
    stretches = _stretches(legs)
    for at, (marks, ohm) in enumerate(stretches):
        alone = len(marks) == 1
        if not alone:
            for pole, start in list(starts.items()):
                starts[pole] = (port, f"parting {at} {pole}")
                circuit.resistor((port, f"trunk {at} {pole}"), start, starts[pole], ohm)
        onward = stretches[at + 1][0] if at + 1 < len(stretches) else ()
        for mark in set(marks) - set(onward):
            leg = left[mark]
            feed, tap = power.of(leg.unit), power.taps[leg.unit]
            wrong = feed is not None and takes_polarity(rig.units[leg.unit], tap, feed.reversed) is False
            for pole, start in starts.items():
                circuit.resistor((mark, pole), start, _inlet(tap, port, leg.unit, pole, wrong), ohm if alone else 0.0)


def _stretches(legs: list[LeadDrop]) -> list[tuple[tuple[str, ...], float]]:
    """The legs that lie in each stretch, and what one of its conductors resists; one for all where a fact is missing."""
    known = y_stretches(legs)
    if known is None:
        return [(tuple(leg.mark for leg in legs), UNKNOWN_LEAD_OHM.value)]
    return [(each.marks, each.ohm) for each in known]


def _inlet(tap: Tap, port: Port, unit: str, pole: str, wrong: bool) -> Node:
    """Where a lead's conductor ends: at the unit, or where a series lead joins the lower outlet's plus to the upper one's minus."""
    if tap.how == "series":
        low = port == _lower(tap)
        if (pole == "+") == low:
            return unit, "joint"
    return unit, {"+": "-", "-": "+"}[pole] if wrong else pole


def _lower(tap: Tap) -> Port:
    """The outlet of a series pair whose return is the pair's."""
    return tap.lower or tap.outlets[0]


def _legs(drops: LeadDrops, fed: tuple[Supplied, ...]) -> dict[Port, list[LeadDrop]]:
    names = {feed.unit for feed in fed}
    legs: dict[Port, list[LeadDrop]] = {}
    for drop in drops.all.values():
        if drop.unit in names:
            legs.setdefault(drop.outlet, []).append(drop)
    return legs


def _return(rig: Rig, port: Port) -> Node:
    """Where an outlet's negative pole is: by itself, on a common, or at the mains earth."""
    if rig.supplies[port.thing].minus_earthed:
        return ("ground", *EARTH)
    outlet = outlet_at(rig, port)
    return (port, "-") if outlet is None or outlet.common is None else (port.thing, "common", outlet.common)


def _ground(rig: Rig, fed: Container[str], pole: Pole) -> Node:
    """A unit's audio ground is a pole of its supply, where that is stated; else it stands by itself."""
    name, part = pole
    unit = rig.units.get(name)
    if part == GROUND and unit is not None and unit.ground is not None and name in fed:
        return name, "+" if positive(unit) else "-"
    return "ground", name, part


def _sound(tap: Tap) -> bool:
    """Whether it is a feed that can be solved: in series of two different outlets, or one, or several in parallel."""
    return bool(tap.outlets) and len(set(tap.outlets)) == len(tap.outlets)


def _volts(volts: dict[Node, float], unit: str) -> float:
    return volts[unit, "+"] - volts[unit, "-"]


def _inlet_volts(
    power: PowerAssignment,
    drops: LeadDrops,
    legs: dict[str, list[LeadDrop]],
    feed: Supplied,
    least_v: float,
    most_v: float,
    states: tuple[SolvedState, ...],
) -> InletVolts:
    """The figures of an inlet, from the solved network."""
    unit, outlets = feed.unit, power.taps[feed.unit].outlets
    behind = (each for leg in drops.behind(outlets) for each in (leg.loop, leg.current) if isinstance(each, Figure))
    most = known_figure(
        f"{unit}.volts.most",
        found(
            most_v,
            lambda: "what its outlets give with no unit drawing",
            *(power.loads[port].volts for port in outlets),
        ),
        FINE_VOLTS,
        rule="no current, no drop",
        source=_KIRCHHOFF,
        label="no load",
    )
    least = known_figure(
        f"{unit}.volts.least",
        found(
            least_v,
            lambda: (
                "nodal analysis of the whole power wiring with its shields and shared returns, every unit drawing what it draws"
            ),
            most,
            *behind,
        ),
        FINE_VOLTS,
        rule="Kirchhoff's current law at each node; the legs of a Y lie together as far as they can; the least of all scenarios",
        source=_KIRCHHOFF,
        label="least volts",
    )
    flows = (state.returned_ma.get(unit, 0.0) for state in states)
    series = power.taps[unit].how == "series"
    through = (
        "the negative conductor of the lower outlet's lead" if series else "the sum over its leads' negative conductors"
    )
    returned = known_figure(
        f"{unit}.return",
        found(
            max(flows, key=abs, default=0.0),
            lambda: f"nodal analysis, as its least volts: {through}",
            least,
        ),
        FINE_MILLIAMPS,
        rule="what does not come back here comes back through shields and the leads of others",
        source=_KIRCHHOFF,
    )
    return InletVolts(unit, least, most, returned, _known(power, legs, feed))


def _known(power: PowerAssignment, legs: dict[str, list[LeadDrop]], feed: Supplied) -> bool:
    beside = {name for port in feed.outlets for name in power.loads[port].units}
    drops = [drop for name in beside for drop in legs.get(name, ())]
    return bool(drops) and all(drop.one_way_ohm is not None and drop.ma is not None for drop in drops)


def _state(
    power: PowerAssignment, drops: LeadDrops, state: GroundState, solution: Solution, drawn: float
) -> SolvedState:
    returns = tuple(
        ReturnFlow(
            drop.mark,
            drop.outlet,
            drop.unit,
            -1000 * solution.amps[drop.mark, "-"],
            within=power.taps[drop.unit].how == "series" and drop.outlet != _lower(power.taps[drop.unit]),
        )
        for drop in drops.all.values()
        if (drop.mark, "-") in solution.amps
    )
    shields = tuple(
        ShieldFlow(link.marks, (link.ends[0][0], link.ends[1][0]), 1000 * solution.amps["shield", at], link)
        for at, link in enumerate(state.links)
        if ("shield", at) in solution.amps and link.marks
    )
    return SolvedState(state.scenarios, returns, shields, drawn)


COMPUTE = power_network
