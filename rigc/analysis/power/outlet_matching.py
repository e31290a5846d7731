"""Claims on kinds of places, each kind with room for some -> who gets which kind, or who stands in whose way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeVar

from rigc.record import Record

K = TypeVar("K")


class Matching(Record):
    """`placed` is as many claims as can be met at once. `rivals` are claims that together want fewer places than they are
    (all want only kinds in `contested`); empty when all are met."""

    placed: int
    rivals: tuple[int, ...]
    contested: tuple[object, ...]


def match(claims: Sequence[Sequence[K]], room: Mapping[K, int]) -> Matching:
    """Meets as many claims as possible, by augmenting paths; `claims` lists for each claim the kinds that would do."""
    holders: dict[K, list[int]] = {kind: [] for kind in room}
    short: tuple[tuple[int, ...], tuple[K, ...]] = ((), ())
    placed = 0
    for claim in range(len(claims)):
        reached = _place(claim, claims, room, holders)
        if reached is None:
            placed += 1
        elif not short[0]:
            rivals = sorted({claim, *(each for kind in reached for each in holders[kind])})
            short = tuple(rivals), tuple(reached)
    return Matching(placed, *short)


def _place(
    claim: int, claims: Sequence[Sequence[K]], room: Mapping[K, int], holders: dict[K, list[int]]
) -> list[K] | None:
    came: dict[K, tuple[int, K | None]] = {}
    queue: list[tuple[int, K | None]] = [(claim, None)]
    for mover, leaves in queue:
        for kind in claims[mover]:
            if kind in came:
                continue
            came[kind] = (mover, leaves)
            if len(holders[kind]) < room[kind]:
                _shift(kind, came, holders)
                return None
            queue.extend((holder, kind) for holder in holders[kind])
    return list(came)


def _shift(kind: K, came: dict[K, tuple[int, K | None]], holders: dict[K, list[int]]) -> None:
    to: K | None = kind
    while to is not None:
        mover, leaves = came[to]
        holders[to].append(mover)
        if leaves is not None:
            holders[leaves].remove(mover)
        to = leaves
