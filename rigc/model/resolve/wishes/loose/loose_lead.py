"""A stated lead that no other statement joins, and what the others join."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from typing import TypeVar

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.jacks import Port
from rigc.model.things import AnyThing
from rigc.model.wishes import Connection, PowerWishes
from rigc.record import Record
from rigc.source import Span
from rigc.syntax import nodes

Each = TypeVar("Each")
Name = TypeVar("Name", str, int)


class LooseLead(Record):
    """A lead between two jacks that nothing joins; `carries` is `power` where it leaves an outlet, else `midi`, `control` or `audio`."""

    mark: str
    start: Port
    end: Port
    carries: str
    span: Span
    ends: tuple[Span, Span]


class Joints(Record):
    """What the other statements join: `free` are those connections that no lead claims."""

    things: Mapping[str, AnyThing]
    chains: Sequence[nodes.Chain]
    connections: Mapping[tuple[Port, Port], Connection]
    free: Sequence[Connection]
    power: PowerWishes

    @cached_property
    def begun(self) -> Mapping[str, Sequence[Connection]]:
        """Those of `free` by the thing at which they begin."""
        return by(self.free, lambda joint: (joint.start.thing,))

    @cached_property
    def ended(self) -> Mapping[str, Sequence[Connection]]:
        """Those of `free` by the thing at which they end."""
        return by(self.free, lambda joint: (joint.end.thing,))


Left = Mapping[str, LooseLead]
"""The leads that are not told yet, by their numbers: what a cause yields is taken from them before it goes on."""
Caused = Iterator[tuple[Iterable[LooseLead], Diagnostic]]
"""What one cause has: leads, and the one finding that tells them."""


def carrying(what: str, left: Left) -> list[LooseLead]:
    """Those of the leads that carry it."""
    return [each for each in left.values() if each.carries == what]


def by(items: Iterable[Each], names: Callable[[Each], Iterable[Name]]) -> Mapping[Name, Sequence[Each]]:
    """The items by each of their names."""
    found: dict[Name, list[Each]] = {}
    for each in items:
        for name in names(each):
            found.setdefault(name, []).append(each)
    return found


def statement(joint: Connection) -> str:
    """The kind of statement that makes a connection."""
    return f"{joint.origin} block" if joint.origin in ("midi", "control") else joint.origin.split()[0]


def feed_of(lead: LooseLead) -> str:
    """The line of the power block that such a lead asks for."""
    return f"{lead.end.thing} from {lead.start}"
