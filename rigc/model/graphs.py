"""Rig -> graphs of its signal, power and grounds. The only module that imports networkx, and a late one.

What a walk along plain dicts answers (what is reached, what hangs together, a lone ring) is answered by one; networkx is
loaded, which takes as long as a third of a check, only where rings are tangled.
"""

from __future__ import annotations

import graphlib
from collections.abc import Collection, Iterable, Mapping
from functools import cached_property
from typing import TYPE_CHECKING, Any

from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import EARTH, GroundLink, Pole
from rigc.model.ways.inner_ways import Way, inner_ways
from rigc.model.ways.reached import Node, reached
from rigc.model.wishes import When
from rigc.record import Record

if TYPE_CHECKING:
    import networkx

ALWAYS = When()


class SignalGraph(Record):
    """The ways of sound from jack to jack: leads between things, and inside a thing from its inputs to its outputs.

    `onward` holds of every jack that carries sound the jacks to which a way leads from it, in order.
    """

    ways: tuple[Way, ...]
    onward: Mapping[Port, Collection[Port]]

    def after(self, ports: Iterable[Port]) -> frozenset[Port]:
        """The ports that sound from one of these reaches, themselves included."""
        return reached(self.onward, (port for port in ports if port in self.onward))

    def before(self, ports: Iterable[Port]) -> frozenset[Port]:
        """The ports from which sound reaches one of these, themselves included."""
        return reached(self._back, (port for port in ports if port in self._back))

    def circles(self) -> list[list[Port]]:
        """A shortest circle of ports for each set of ports that all reach each other, from the first port by name."""
        try:
            graphlib.TopologicalSorter(self.onward).prepare()
        except graphlib.CycleError:
            return self._circles()
        return []

    def islands(self, things: Iterable[str]) -> list[list[str]]:
        """These things in groups that are wired to each other, in the order given."""
        named = dict.fromkeys(things)
        return parts(named, ((a.thing, b.thing) for a, b in self.ways if a.thing in named and b.thing in named))

    @cached_property
    def _back(self) -> Mapping[Port, Collection[Port]]:
        back: dict[Port, list[Port]] = {port: [] for port in self.onward}
        for start, ends in self.onward.items():
            for end in ends:
                back[end].append(start)
        return back

    def _circles(self) -> list[list[Port]]:
        import networkx as nx

        graph = nx.DiGraph(self.onward)
        tangles = [sorted(part, key=str) for part in nx.strongly_connected_components(graph) if len(part) > 1]
        return sorted((_circle(graph, part) for part in tangles), key=str)


class GroundGraph(Record):
    """Grounds, and every conductor that joins two of them."""

    poles: tuple[Pole, ...]
    links: tuple[GroundLink, ...]


def signal_graph(rig: Rig, when: When = ALWAYS) -> SignalGraph:
    """The audio graph of everything that can hold together with `when`; every jack that carries sound is a node."""
    leads = [each for each in rig.connections if each.signal == "audio" and each.when.meets(when)]
    wired = frozenset(port for each in leads for port in (each.start, each.end))
    ways = [(each.start, each.end) for each in leads]
    for unit in rig.units.values():
        ways += inner_ways(rig, unit, wired)
    onward: dict[Port, dict[Port, None]] = {
        Port(thing.name, jack.name): {} for thing in rig.things.values() for jack in thing.jacks if jack.audio
    }
    for start, end in ways:
        onward.setdefault(start, {})[end] = None
        onward.setdefault(end, {})
    return SignalGraph(tuple(dict.fromkeys(ways)), onward)


def ground_graph(poles: Iterable[Pole], links: Iterable[GroundLink]) -> GroundGraph:
    """Of these grounds, and of those at the ends of the links."""
    links = tuple(links)
    return GroundGraph(tuple(dict.fromkeys([*poles, *(pole for link in links for pole in link.ends)])), links)


def joined_grounds(graph: GroundGraph) -> list[list[Pole]]:
    """Grounds in groups that are joined by conductors other than the mains earth, in the order of the graph's grounds."""
    poles = [pole for pole in graph.poles if pole != EARTH]
    return parts(poles, (link.ends for link in graph.links if EARTH not in link.ends))


def ground_rings(graph: GroundGraph) -> list[list[GroundLink]]:
    """A minimum cycle basis as the links around each ring: first those between the same two grounds, then the longer ones.

    Of several links between two grounds the first stands for all in the longer rings. Grounds are numbered in the order of
    the graph before the search: its choice between rings of one length must not hang on how strings are hashed.
    """
    order = {pole: number for number, pole in enumerate(graph.poles)}
    found: dict[tuple[int, int], list[GroundLink]] = {}
    for link in graph.links:
        one, other = (order[pole] for pole in link.ends)
        found.setdefault((min(one, other), max(one, other)), []).append(link)
    between = dict(sorted(found.items(), key=lambda each: each[0][0]))
    rings = [[link] for (low, high), links in between.items() if low == high for link in links]
    rings += [[links[0], link] for (low, high), links in between.items() if low != high for link in links[1:]]
    for ring in _longer_rings(sorted(pair for pair in between if pair[0] != pair[1])):
        around = zip(ring, [*ring[1:], ring[0]], strict=True)
        rings.append([between[min(pair), max(pair)][0] for pair in around])
    return rings


def parts(nodes: Iterable[Node], pairs: Iterable[tuple[Node, Node]]) -> list[list[Node]]:
    """The nodes in groups that pairs join, in the order given."""
    beside: dict[Node, list[Node]] = {node: [] for node in nodes}
    for one, other in pairs:
        beside[one].append(other)
        beside[other].append(one)
    order = {node: number for number, node in enumerate(beside)}
    groups: list[list[Node]] = []
    left = dict.fromkeys(beside)
    while left:
        part = reached(beside, [next(iter(left))])
        groups.append(sorted(part, key=order.__getitem__))
        for node in part:
            del left[node]
    return groups


def _longer_rings(pairs: list[tuple[int, int]]) -> list[list[int]]:
    """A minimum cycle basis of a graph without loops and double edges."""
    beside = _without_ends(pairs)
    if any(len(others) > 2 for others in beside.values()):
        import networkx as nx

        rings: list[list[int]] = nx.minimum_cycle_basis(nx.k_core(nx.Graph(pairs), 2))
        return rings
    lone = parts(beside, ((one, other) for one, others in beside.items() for other in others))
    return [_walked(beside, part[0]) for part in lone]


def _without_ends(pairs: Iterable[tuple[int, int]]) -> dict[int, list[int]]:
    """The neighbours of each node that is left when nodes with fewer than two are taken away, again and again."""
    beside: dict[int, list[int]] = {}
    for one, other in pairs:
        beside.setdefault(one, []).append(other)
        beside.setdefault(other, []).append(one)
    ends = [node for node, others in beside.items() if len(others) < 2]
    while ends:
        node = ends.pop()
        for other in beside.pop(node):
            beside[other].remove(node)
            if len(beside[other]) == 1:
                ends.append(other)
    return beside


def _walked(beside: Mapping[int, list[int]], first: int) -> list[int]:
    """Once around the ring in which each node has two neighbours."""
    ring, then = [first], beside[first][0]
    while then != first:
        one, other = beside[then]
        ring.append(then)
        then = other if one == ring[-2] else one
    return ring


def _circle(graph: networkx.DiGraph, part: list[Port]) -> list[Port]:
    from networkx import shortest_path

    inside, first = graph.subgraph(part), part[0]
    back: list[list[Any]] = [shortest_path(inside, then, first) for then in inside.successors(first)]
    shortest = min(back, key=lambda way: (len(way), str(way)))
    return [first, *shortest[:-1]]
