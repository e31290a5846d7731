"""Pieces and the length of a raw (a reel or roll) -> from how few raws they can be cut, how, and whether fewer would do."""

from __future__ import annotations

from rigc.record import Record
from rigc.solvers.cutting.demand import Demand, Piece, Raw, demand, left_of
from rigc.solvers.cutting.exhaustive import Exhaustive
from rigc.solvers.cutting.first_fit import first_fit
from rigc.solvers.cutting.relaxation import relaxation


class CuttingPlan(Record):
    """Which pieces come from which raw of `length`.

    No plan has fewer raws than `bound`, which is not yet rounded up, nor than `least`. `too_long` are the pieces that no raw holds: they
    are in no raw.
    """

    length: int
    raws: tuple[Raw, ...]
    bound: float
    least: int
    too_long: tuple[Piece, ...]


def cutting_plan(length: int, pieces: tuple[Piece, ...]) -> CuttingPlan:
    """The fewest raws, in whole units of length. Where the search is given up, the plan's bound tells how far off it may be."""
    fitting = tuple(piece for piece in pieces if piece <= length)
    too_long = tuple(sorted((piece for piece in pieces if piece > length), reverse=True))
    wanted = demand(length, fitting)
    bound, raws = wanted.total / length, first_fit(wanted)
    least = -(-wanted.total // length)
    if len(raws) > least:
        relaxed = relaxation(wanted)
        if relaxed is not None:
            bound, least = max(bound, relaxed.bound), max(least, relaxed.least)
            raws = _fewer(raws, _rounded(wanted, relaxed.raws))
        raws, least = _searched(wanted, raws, least)
    return CuttingPlan(length, tuple(raws), bound, least, too_long)


def _rounded(wanted: Demand, whole: tuple[Raw, ...]) -> list[Raw]:
    """The whole raws of the split plan, less what they hold too much, and the rest cut as well as can be."""
    raws: list[Raw] = []
    open_counts = dict(zip(wanted.sizes, wanted.counts, strict=True))
    for raw in whole:
        kept = []
        for piece in raw:
            if open_counts[piece]:
                open_counts[piece] -= 1
                kept.append(piece)
        if kept:
            raws.append(tuple(kept))
    rest = left_of(wanted, raws)
    quick = first_fit(rest)
    best, _ = _searched(rest, quick, -(-rest.total // rest.length))
    return [*raws, *best]


def _searched(wanted: Demand, raws: list[Raw], least: int) -> tuple[list[Raw], int]:
    """Tries fewer raws, from the least number up; each number that is proved impossible raises the least."""
    for number in range(least, len(raws)):
        search = Exhaustive(wanted, number)
        if search.found is not None:
            return search.found, least
        if not search.given_up and number == least:
            least += 1
    return raws, least


def _fewer(one: list[Raw], other: list[Raw]) -> list[Raw]:
    return other if len(other) < len(one) else one
