"""Chains -> strands: a way from its first thing to its end, with the ways that branch off it.

A chain that begins where another ends is the rest of that one; one that begins at a thing on the way branches off there; one
that comes back to where it began is a turn of that thing, such as the loop of an amp.
"""

from __future__ import annotations

from rigc.analysis.signal.signal_steps import ChainSteps
from rigc.record import Record
from rigc.reports.drawings.flow.nodes import Node, nodes, turn_of


class Strand(Record):
    """Nodes from left to right; each branch with the place in `nodes` that it leaves from."""

    nodes: tuple[Node, ...]
    branches: tuple[tuple[int, Strand], ...] = ()


class _Growing:
    """A strand to which chains that begin on it may still be added."""

    def __init__(self, found: list[Node]) -> None:
        self.nodes = found
        self.branches: list[tuple[int, _Growing]] = []

    def holds(self, thing: str) -> tuple[_Growing, int] | None:
        for at, node in enumerate(self.nodes):
            if node.thing == thing and not node.again:
                return self, at
        return next((found for _, branch in self.branches if (found := branch.holds(thing)) is not None), None)

    def grown(self) -> Strand:
        return Strand(tuple(self.nodes), tuple((at, branch.grown()) for at, branch in self.branches))


def strands(chains: tuple[ChainSteps, ...]) -> tuple[Strand, ...]:
    """In the order of the source; each chain of two steps and more is on exactly one of them."""
    roots: list[_Growing] = []
    drawn: set[str] = set()
    for number, chain in enumerate(chains, 1):
        if chain.steps:
            _add(roots, chain, number, drawn, several=len(chains) > 1)
            drawn |= {step.thing for step in chain.steps}
    return tuple(root.grown() for root in roots)


def _add(roots: list[_Growing], chain: ChainSteps, number: int, drawn: set[str], several: bool) -> None:
    found = list(nodes(chain))
    start = found[0].thing
    name = _named(chain, number, several)
    if found[-1].thing in drawn and len(found) > 1:
        found[-1] = found[-1].replace(again=True)
    held = next((found_in for root in roots if (found_in := root.holds(start)) is not None), None)
    if held is None:
        found[0] = found[0].replace(again=start in drawn, caption=name + _when(chain))
        roots.append(_Growing(found))
        return
    strand, at = held
    if len(found) > 1 and found[-1].thing == start:
        turn = turn_of(name + _when(chain), list(chain.steps[1:]))
        strand.nodes[at] = strand.nodes[at].replace(turns=(*strand.nodes[at].turns, turn))
        return
    rest = found[1:]
    if not rest:
        return
    rest[0] = rest[0].replace(caption=name + _jack(chain) + _when(chain))
    if at == len(strand.nodes) - 1:
        strand.nodes += rest
    else:
        strand.branches.append((at, _Growing(rest)))


def _named(chain: ChainSteps, number: int, several: bool) -> str:
    return chain.name or (f"chain {number}" if several else "")


def _when(chain: ChainSteps) -> str:
    when = [*chain.when.scenarios, *([f"with {chain.when.instrument}"] if chain.when.instrument else [])]
    return f": {', '.join(when)}" if when else ""


def _jack(chain: ChainSteps) -> str:
    outs = chain.steps[0].outs
    return f", from jack {outs[0]}" if len(outs) == 1 else ""
