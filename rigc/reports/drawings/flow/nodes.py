"""Signal steps of a chain -> nodes in a row with the leads between them, and the turns that begin and end at a node."""

from __future__ import annotations

from rigc.analysis.signal.signal_steps import ChainSteps, Step
from rigc.record import Record


class Hop(Record):
    """From node to node: the numbers of its leads (or `wireless`), and whether it carries one side or both.

    An `inside` hop is no lead: it joins two parts of one thing.
    """

    leads: tuple[str, ...]
    stereo: bool
    inside: bool = False


class Turn(Record):
    """A loop, or a way of a blend, that leaves a node and comes back to it.

    Its stops are the hop into each unit, the unit, and its step; `number` is the step at which it is back.
    """

    name: str
    stops: tuple[tuple[Hop, str, int], ...]
    back: Hop
    number: int


class Node(Record):
    """A thing on the way: its step, the hop into it (None where the way begins), and its turns.

    `caption` names the chain that begins with this hop; `again` marks a thing that is drawn elsewhere as well.
    """

    thing: str
    number: int
    hop: Hop | None
    turns: tuple[Turn, ...] = ()
    caption: str = ""
    again: bool = False


def nodes(chain: ChainSteps) -> tuple[Node, ...]:
    """The main way of a chain; the steps of one loop, from send to return, are a turn of the node before them."""
    found: list[Node] = []
    open_: list[Step] = []
    for step in chain.steps:
        if not step.loop:
            found.append(Node(step.thing, int(step.number), _hop(step) if found else None))
            continue
        open_.append(step)
        if found and step.thing == found[-1].thing:
            turn = turn_of(step.loop, open_)
            found[-1] = found[-1].replace(turns=(*found[-1].turns, turn))
            open_ = []
    return tuple(found)


def turn_of(name: str, steps: list[Step]) -> Turn:
    """The units passed, and the last step, which is back at the thing that holds them."""
    stops = tuple((_hop(each), each.thing, int(each.number)) for each in steps[:-1])
    return Turn(name, stops, _hop(steps[-1]), int(steps[-1].number))


def _hop(step: Step) -> Hop:
    return Hop(tuple(dict.fromkeys(step.leads)), len(step.ins) > 1)
