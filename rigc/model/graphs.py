"""Rig -> graphs of its signal, power and grounds. The only module that imports networkx."""

from __future__ import annotations

from collections.abc import Iterable

import networkx as nx

from rigc.model.inner_ways import Way, inner_ways
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection, When
from rigc.record import Record

ALWAYS = When()
GROUND, FAR = "ground", "far"

Pole = tuple[str, str]


class SignalGraph(Record):
    """The ways of sound from jack to jack: leads between things, and inside a thing from its inputs to its outputs."""

    ways: tuple[Way, ...]
    digraph: nx.DiGraph

    def after(self, ports: Iterable[Port]) -> frozenset[Port]:
        """The ports that sound from one of these reaches, themselves included."""
        return _reached(self.digraph, ports)

    def before(self, ports: Iterable[Port]) -> frozenset[Port]:
        """The ports from which sound reaches one of these, themselves included."""
        return _reached(self.digraph.reverse(copy=False), ports)

    def circles(self) -> list[list[Port]]:
        """A shortest circle of ports for each set of ports that all reach each other, from the first port by name."""
        tangles = [sorted(part, key=str) for part in nx.strongly_connected_components(self.digraph) if len(part) > 1]
        return sorted((self._circle(part) for part in tangles), key=str)

    def islands(self, things: Iterable[str]) -> list[list[str]]:
        """These things in groups that are wired to each other, in the order given."""
        order = {name: number for number, name in enumerate(things)}
        joined = nx.Graph()
        joined.add_nodes_from(order)
        joined.add_edges_from((a.thing, b.thing) for a, b in self.ways if a.thing in order and b.thing in order)
        groups = (sorted(part, key=order.__getitem__) for part in nx.connected_components(joined))
        return sorted(groups, key=lambda group: order[group[0]])

    def _circle(self, part: list[Port]) -> list[Port]:
        inside, first = self.digraph.subgraph(part), part[0]
        back: list[list[Port]] = [nx.shortest_path(inside, then, first) for then in inside.successors(first)]
        shortest = min(back, key=lambda way: (len(way), str(way)))
        return [first, *shortest[:-1]]


def signal_graph(rig: Rig, when: When = ALWAYS) -> SignalGraph:
    """The audio graph of everything that can hold together with `when`; every jack that carries sound is a node."""
    leads = [each for each in rig.connections if each.signal == "audio" and each.when.meets(when)]
    wired = frozenset(port for each in leads for port in (each.start, each.end))
    ways = [(each.start, each.end) for each in leads]
    for unit in rig.units.values():
        ways += inner_ways(rig, unit, wired)
    graph = nx.DiGraph()
    for thing in rig.things.values():
        graph.add_nodes_from(Port(thing.name, jack.name) for jack in thing.jacks if jack.audio)
    graph.add_edges_from(ways)
    return SignalGraph(tuple(dict.fromkeys(ways)), graph)


def power_graph(fed: Iterable[tuple[Port, str]]) -> nx.DiGraph:
    """Outlets and the units that each feeds, from pairs of both."""
    graph = nx.DiGraph()
    graph.add_edges_from(fed)
    return graph


def ground_graph(rig: Rig, fed: Iterable[tuple[Port, str]]) -> nx.MultiGraph:
    """The grounds on the board and what joins them: shields of audio leads, and d.c. commons that feed more than one unit.

    A node is a thing and a part: a unit's `ground`, the `far` side of an isolating path in it, or a common's pole
    (`negative`; `positive` for a unit whose ground is its plus pole). `fed` pairs outlets with the units on them.
    Instruments, amps and panels are no nodes: where their grounds lie depends on the scenario.
    """
    graph = nx.MultiGraph()
    board = [unit for unit in rig.units.values() if unit.kind == "unit" and any(jack.audio for jack in unit.jacks)]
    graph.add_nodes_from((unit.name, GROUND) for unit in board)
    for lead in rig.connections:
        if lead.signal == "audio" and all((port.thing, GROUND) in graph for port in (lead.start, lead.end)):
            graph.add_edge(_shield(rig, lead, lead.start), _shield(rig, lead, lead.end))
    for common, units in _commons(rig, fed).items():
        for name in units if len(units) > 1 else ():
            pole = rig.units[name].ground
            if pole is None or pole.value != "isolated":
                graph.add_edge((common, pole.value if pole else "negative"), (name, GROUND))
    return graph


def _reached(digraph: nx.DiGraph, ports: Iterable[Port]) -> frozenset[Port]:
    """One walk from all ports together: a descent from each would cost the square of a long chain."""
    todo = [port for port in ports if port in digraph]
    found = set(todo)
    while todo:
        fresh = [port for port in digraph.successors(todo.pop()) if port not in found]
        found.update(fresh)
        todo += fresh
    return frozenset(found)


def _shield(rig: Rig, lead: Connection, port: Port) -> Pole:
    """Where a lead's shield lands: on the far side if an isolating path ends at that jack and the lead leaves there."""
    paths = rig.units[port.thing].paths
    beyond = lead.start == port and any(path.end == port.jack and "transformer" in path.how for path in paths)
    return port.thing, FAR if beyond else GROUND


def _commons(rig: Rig, fed: Iterable[tuple[Port, str]]) -> dict[str, list[str]]:
    """The units on each outlet, or on all outlets of a supply that share one common."""
    commons: dict[str, list[str]] = {}
    for port, unit in fed:
        outlet = rig.supplies[port.thing].outlet(port.jack)
        shared = outlet.common if outlet else None
        commons.setdefault(f"{port.thing} common {shared}" if shared else str(port), []).append(unit)
    return commons
