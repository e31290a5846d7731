"""Signal steps of a chain -> nodes in a row with the leads between them, and the loops that hang from a node."""

from __future__ import annotations

from rigc.analysis.signal.signal_steps import ChainSteps, Step
from rigc.record import Record


class Hop(Record):
    """From node to node: the numbers of its leads (or `wireless`), and whether it carries one side or both."""

    leads: tuple[str, ...]
    stereo: bool


class Side(Record):
    """A loop or a way of a blend: its name, and its units with the hop into each and the hop back."""

    name: str
    stops: tuple[tuple[Hop, str], ...]
    back: Hop


class Node(Record):
    """A thing on the way, the hop into it (None where the chain begins), and its loops."""

    thing: str
    hop: Hop | None
    sides: tuple[Side, ...]


def nodes(chain: ChainSteps) -> tuple[Node, ...]:
    """The main way of a chain; the steps of one loop, from send to return, are a side of the node before them."""
    found: list[Node] = []
    open_: list[Step] = []
    for step in chain.steps:
        if not step.loop:
            found.append(Node(step.thing, _hop(step) if found else None, ()))
            continue
        open_.append(step)
        if found and step.thing == found[-1].thing:
            stops = tuple((_hop(each), each.thing) for each in open_[:-1])
            side = Side(step.loop, stops, _hop(step))
            found[-1] = found[-1].replace(sides=(*found[-1].sides, side))
            open_ = []
    return tuple(found)


def _hop(step: Step) -> Hop:
    return Hop(tuple(dict.fromkeys(step.leads)), len(step.ins) > 1)
