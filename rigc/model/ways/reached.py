"""What leads on to what, and where one starts -> all that is reached."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping
from typing import TypeVar

Node = TypeVar("Node", bound=Hashable)


def reached(onward: Mapping[Node, Iterable[Node]], starts: Iterable[Node]) -> frozenset[Node]:
    """The starts and all behind them. One walk from all starts together: a descent from each would cost the square of a long chain."""
    todo = list(starts)
    found = set(todo)
    while todo:
        fresh = [node for node in onward.get(todo.pop(), ()) if node not in found]
        found.update(fresh)
        todo += fresh
    return frozenset(found)
