"""A jack -> the jacks on which it hangs, each behind its own: a chain may be of any length, and a circle is cut where it closes."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Iterator

from rigc.model.jacks import Port


def sources_first(
    port: Port, sources: Callable[[Port], Iterable[Port]], known: Container[Port] = frozenset()
) -> Iterator[Port]:
    """Each jack once, and `port` last. What is `known` is left out, also what becomes so meanwhile."""
    entered = {port}
    way = [(port, iter(sources(port)))]
    while way:
        here, rest = way[-1]
        more = next((each for each in rest if each not in known and each not in entered), None)
        if more is None:
            way.pop()
            yield here
        else:
            entered.add(more)
            way.append((more, iter(sources(more))))
