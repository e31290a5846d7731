"""Sizes and counts -> a quick plan: the longest piece first, each onto the first raw that still has room for it."""

from __future__ import annotations

from rigc.solvers.cutting.demand import Demand, Raw


def first_fit(wanted: Demand) -> list[Raw]:
    """First-fit decreasing: never more than 11/9 of the least number of raws, and a bit."""
    raws: list[list[int]] = []
    room: list[int] = []
    for size, count in zip(wanted.sizes, wanted.counts, strict=True):
        at = 0  # equal pieces: what had no room for the last has none for this
        for _ in range(count):
            while at < len(raws) and room[at] < size:
                at += 1
            if at == len(raws):
                raws.append([])
                room.append(wanted.length)
            raws[at].append(size)
            room[at] -= size
    return [tuple(raw) for raw in raws]
