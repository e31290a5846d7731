"""Rig -> graphs of its signal, power and grounds. The only module that imports networkx."""

from __future__ import annotations

from collections.abc import Iterable

import networkx as nx

from rigc.model.ground_link import EARTH, GroundLink, Pole
from rigc.model.inner_ways import Way, inner_ways
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import When
from rigc.record import Record

ALWAYS = When()


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


def ground_graph(poles: Iterable[Pole], links: Iterable[GroundLink]) -> nx.MultiGraph:
    """Grounds and every conductor that joins two of them; each edge keeps its `link`."""
    graph = nx.MultiGraph()
    graph.add_nodes_from(poles)
    for link in links:
        graph.add_edge(*link.ends, link=link)
    return graph


def joined_grounds(graph: nx.MultiGraph) -> list[list[Pole]]:
    """Grounds in groups that are joined by conductors other than the mains earth, in the order of the graph's nodes."""
    order = {pole: number for number, pole in enumerate(graph) if pole != EARTH}
    parts = nx.connected_components(graph.subgraph(order))
    return sorted((sorted(part, key=order.__getitem__) for part in parts), key=lambda part: order[part[0]])


def ground_rings(graph: nx.MultiGraph) -> list[list[GroundLink]]:
    """A minimum cycle basis as the links around each ring: first those between the same two grounds, then the longer ones.

    Of several links between two grounds the first stands for all in the longer rings. Nodes are numbered in the order of
    the graph before the search: its choice between rings of one length must not hang on how strings are hashed.
    """
    order = {pole: number for number, pole in enumerate(graph)}
    between: dict[tuple[int, int], list[GroundLink]] = {}
    for start, end, link in graph.edges(data="link"):
        low, high = sorted((order[start], order[end]))
        between.setdefault((low, high), []).append(link)
    rings = [[link] for (low, high), links in between.items() if low == high for link in links]
    rings += [[links[0], link] for (low, high), links in between.items() if low != high for link in links[1:]]
    simple = nx.Graph(sorted(pair for pair in between if pair[0] != pair[1]))
    for ring in nx.minimum_cycle_basis(nx.k_core(simple, 2)) if simple else ():
        around = zip(ring, [*ring[1:], ring[0]], strict=True)
        rings.append([between[min(pair), max(pair)][0] for pair in around])
    return rings


def _reached(digraph: nx.DiGraph, ports: Iterable[Port]) -> frozenset[Port]:
    """One walk from all ports together: a descent from each would cost the square of a long chain."""
    todo = [port for port in ports if port in digraph]
    found = set(todo)
    while todo:
        fresh = [port for port in digraph.successors(todo.pop()) if port not in found]
        found.update(fresh)
        todo += fresh
    return frozenset(found)
