"""The ways of sound as a graph -> the places where ways meet again, and the ways that lead there from where they parted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from rigc.model.jacks import Port
from rigc.record import Record

MOST_WAYS = 32
"""Beyond this the ways of one place are not told one by one: no board that is built has as many."""

_Onward = Mapping[Port, Sequence[Port]]


class Meeting(Record):
    """Ways that part at `split` and meet at `join`: each the ports passed, both ends included."""

    split: Port
    join: Port
    ways: tuple[tuple[Port, ...], ...]


def meetings(onward: _Onward, sources: Sequence[Port]) -> Iterator[Meeting]:
    """Every place where ways from one split meet; ways that never were one (two instruments) are none."""
    order = in_order(onward, sources)
    before: dict[Port, list[Port]] = {}
    for start in order:
        for end in onward.get(start, ()):
            before.setdefault(end, []).append(start)
    parted = _last_common(order, before, set(sources))
    for join in order:
        split = parted.get(join)
        if len(before.get(join, ())) > 1 and split is not None:
            yield Meeting(split, join, tuple(_between(before, split, join)))


def first_way(onward: _Onward, start: Port, end: Port) -> tuple[Port, ...] | None:
    """The way with the fewest jacks, the first stated of equal ones; None where there is none."""
    back: dict[Port, Port] = {}
    todo = [start]
    for port in todo:
        if port == end:
            break
        for after in onward.get(port, ()):
            if after not in back and after != start:
                back[after] = port
                todo.append(after)
    if end != start and end not in back:
        return None
    way = [end]
    while way[-1] != start:
        way.append(back[way[-1]])
    return tuple(reversed(way))


def in_order(onward: _Onward, sources: Sequence[Port]) -> list[Port]:
    """The ports that are reached, each after those before it (what closes a circle set aside)."""
    done: dict[Port, None] = {}
    seen: set[Port] = set()
    for source in reversed(sources):
        stack: list[tuple[Port, bool]] = [(source, False)]
        while stack:
            port, left = stack.pop()
            if left:
                done.setdefault(port)
            elif port not in seen:
                seen.add(port)
                stack.append((port, True))
                stack += [(after, False) for after in onward.get(port, ()) if after not in seen]
    return list(done)[::-1]


def _last_common(order: list[Port], before: dict[Port, list[Port]], sources: set[Port]) -> dict[Port, Port | None]:
    """For each port the nearest one that all ways to it pass; None where there is none."""
    rank = {port: number for number, port in enumerate(order)}
    common: dict[Port, Port | None] = {}
    for port in order:
        come = [each for each in before.get(port, ()) if rank[each] < rank[port]]
        if port in sources or not come:
            common[port] = None
            continue
        meet: Port | None = come[0]
        for other in come[1:]:
            meet = _common(meet, other, common, rank)
        common[port] = meet
    return common


def _common(
    one: Port | None, other: Port | None, common: dict[Port, Port | None], rank: dict[Port, int]
) -> Port | None:
    while one is not None and other is not None and one != other:
        if rank[one] > rank[other]:
            one = common[one]
        else:
            other = common[other]
    return one if other is not None else None


def _between(before: dict[Port, list[Port]], split: Port, join: Port) -> list[tuple[Port, ...]]:
    found: list[tuple[Port, ...]] = []
    stack: list[tuple[Port, ...]] = [(join,)]
    while stack and len(found) < MOST_WAYS:
        way = stack.pop()
        if way[0] == split:
            found.append(way)
        else:
            stack += [(each, *way) for each in reversed(before.get(way[0], ())) if each not in way]
    return found
