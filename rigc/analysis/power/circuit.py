"""Voltage sources, resistors and loads -> every node's voltage and every resistor's current, by nodal analysis.

Kirchhoff's current law at each node. Ideal sources join nodes at fixed differences, so that only one voltage for each such group is unknown;
what is left is a sparse symmetric system, solved by Gaussian elimination, the node with the fewest neighbours first.
"""

from __future__ import annotations

import heapq
from collections.abc import Hashable

from rigc.record import Record

Node = Hashable
LEAST_OHM = 1e-6  # of a resistor: less would be no resistor
_HAIR_V = 1e-9  # far below what anyone measures, far above what binary floats are off


class Solution(Record):
    """Voltages in V, against one node in each part that no conductor joins to the others; currents in A, from a resistor's first end
    to its second."""

    volts: dict[Node, float]
    amps: dict[Node, float]


class Circuit:
    """A d.c. network as it is put together. Sources must not form rings; a ring of sources has no answer. It reckons in plain
    numbers: a formula of all that is eliminated would tell nobody anything."""

    def __init__(self) -> None:
        self._base: dict[Node, tuple[Node, float]] = {}
        self._resistors: dict[Node, tuple[Node, Node, float]] = {}
        self._loads: list[tuple[Node, Node, float]] = []

    def source(self, plus: Node, minus: Node, volts: float) -> None:
        """An ideal source; raises `ValueError` where sources already join its ends."""
        (one, high), (other, low), volts = self._find(plus), self._find(minus), float(volts)
        if one == other:
            raise ValueError(f"a ring of sources at {plus}")
        self._base[one] = other, low + volts - high

    def resistor(self, name: Node, one: Node, other: Node, ohm: float) -> None:
        """A resistor between two nodes."""
        self._resistors[name] = one, other, max(float(ohm), LEAST_OHM)
        self._find(one)
        self._find(other)

    def load(self, plus: Node, minus: Node, amps: float) -> None:
        """A load that takes a current from one node to another, whatever its voltage."""
        self._loads.append((plus, minus, float(amps)))
        self._find(plus)
        self._find(minus)

    def copy(self) -> Circuit:
        """The same network, to which more may be added."""
        made = Circuit()
        made._base, made._resistors, made._loads = dict(self._base), dict(self._resistors), [*self._loads]
        return made

    def idle(self) -> dict[Node, float]:
        """The voltages in V with no load, told as in a `Solution`. Without a current both ends of a resistor are at one voltage; where sources work
        against each other there is one, and the network is solved."""
        rest = self.copy()
        rest._loads = []
        for one, other, _ in self._resistors.values():
            (a, above), (b, below) = rest._find(one), rest._find(other)
            if a != b:
                rest._base[a] = b, below - above
            elif abs(above - below) > _HAIR_V:
                rest._base = dict(self._base)
                return rest.solved().volts
        return {node: rest._find(node)[1] for node in self._base}

    def solved(self) -> Solution:
        """The voltages and currents."""
        groups: dict[Node, int] = {}
        where: dict[Node, tuple[int, float]] = {}
        for node in list(self._base):
            group, offset = self._find(node)
            where[node] = groups.setdefault(group, len(groups)), offset
        rows: list[dict[int, float]] = [{} for _ in groups]
        flows = [0.0] * len(rows)  # what comes into each group, in A
        for one, other, ohm in self._resistors.values():
            (a, above), (b, below) = where[one], where[other]
            if a != b:
                for here, there, rise in ((a, b, below - above), (b, a, above - below)):
                    rows[here][here] = rows[here].get(here, 0.0) + 1 / ohm
                    rows[here][there] = rows[here].get(there, 0.0) - 1 / ohm
                    flows[here] += rise / ohm
        for plus, minus, amps in self._loads:
            flows[where[plus][0]] -= amps
            flows[where[minus][0]] += amps
        at = _eliminated(rows, flows)
        volts = {node: at[group] + offset for node, (group, offset) in where.items()}
        return Solution(
            volts, {name: (volts[one] - volts[other]) / ohm for name, (one, other, ohm) in self._resistors.items()}
        )

    def _find(self, node: Node) -> tuple[Node, float]:
        """The node that stands for a node's group, and how far the node lies above it."""
        above, offset = self._base.setdefault(node, (node, 0.0))
        while above != self._base[above][0]:
            above, more = self._base[above]
            offset += more
        if above != node:
            offset += self._base[above][1]
            self._base[node] = above, offset
        return above, offset


def _eliminated(rows: list[dict[int, float]], flows: list[float]) -> list[float]:
    """Each group's voltage; 0 for the last one of each part."""
    order: list[tuple[int, dict[int, float], float]] = []
    sparse = [(len(row), group) for group, row in enumerate(rows)]
    heapq.heapify(sparse)
    done = [False] * len(rows)
    while sparse:
        size, pivot = heapq.heappop(sparse)
        row = rows[pivot]
        if done[pivot] or len(row) != size:
            continue  # it is done, or has changed since
        done[pivot] = True
        own = row.pop(pivot, 0.0)
        order.append((pivot, row, own))
        for there, factor in row.items():
            share = factor / own
            target = rows[there]
            del target[pivot]
            for column, value in row.items():
                target[column] = target.get(column, 0.0) - share * value
            flows[there] -= share * flows[pivot]
            heapq.heappush(sparse, (len(target), there))
    at = [0.0] * len(rows)
    for pivot, row, own in reversed(order):
        at[pivot] = (flows[pivot] - sum(value * at[there] for there, value in row.items())) / own if row else 0.0
    return at
