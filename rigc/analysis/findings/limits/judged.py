"""A number that rigc judges by a limit, and what its facts may be off by -> whether the limit is in doubt, and which fact decides."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from functools import cached_property
from math import inf, isfinite

from rigc.record import Record
from rigc.traced.ranged import Part, Range, rests_on_unsure
from rigc.traced.term import Term, number

_HAIR = 1e-9
_BISECTIONS = 50


class Judged(Record):
    """A `value` of `what` (`the load of mill.o1`) that is to be at most, or at least, its `limit`; both in `unit`. What is
    exactly on its limit keeps it."""

    what: str
    value: Term
    limit: Term | float
    at_most: bool
    unit: str


class Standing:
    """How a judged number stands to its limit, with all that its facts may be. It is reckoned when it is asked for.

    It is `told_elsewhere` where a nearer limit of the same number is broken by what is stated.
    """

    told_elsewhere = False

    def __init__(self, judged: Judged) -> None:
        self.judged = judged
        value, limit = judged.value, number(judged.limit)
        self.over = Range(value - limit if judged.at_most else limit - value)
        self.is_over = float(value) - float(limit) if judged.at_most else float(limit) - float(value)

    @property
    def broken(self) -> bool:
        """Whether the limit is broken by what is stated."""
        return self.is_over > self._hair

    @cached_property
    def in_doubt(self) -> bool:
        """Whether the limit may be kept and may be broken, by what the facts may be."""
        if not self.over.facts or not isfinite(self.is_over) or self.over.bounds is None or not self.over.parts:
            return False
        least, most = self.over.bounds
        return least <= self._hair if self.broken else most > self._hair

    @property
    def exact(self) -> bool:
        """Whether it can come to be as told; else it is at most so."""
        return self.over.exact

    @property
    def parts(self) -> tuple[Part, ...]:
        """What each fact makes of the distance, the one that makes most first."""
        return self.over.parts

    @cached_property
    def edge(self) -> float:
        """What the number may come to, towards the other side of its limit."""
        return _end(self.judged.value, self.judged.at_most is not self.broken)

    @cached_property
    def limit_edge(self) -> float:
        """What the limit may come to, towards the number."""
        return _end(number(self.judged.limit), self.judged.at_most is self.broken)

    @property
    def room(self) -> float:
        """How much of what the deciding fact may be off is left before the limit is passed, as a share; more than 1 where it
        takes others too."""
        taken = self.taken_by(self.parts[0])
        return 1 / taken if taken else inf

    def taken_by(self, part: Part) -> float:
        """How much of what is left to the limit a fact takes by itself, as a share."""
        moves = part.ends[0] - self.is_over if self.broken else part.ends[1] - self.is_over
        return abs(moves) / max(abs(self.is_over), _HAIR)

    @cached_property
    def turn(self) -> float | None:
        """The value of the deciding fact, in its unit, at which the limit is passed, the others as stated; None where it is not."""
        part = self.parts[0]
        far = part.spread.least if self._passes(part, part.spread.least) else part.spread.most
        if not self._passes(part, far):
            return None
        near = part.fact.fact.value
        for _ in range(_BISECTIONS):
            middle = (near + far) / 2
            near, far = (near, middle) if self._passes(part, middle) else (middle, far)
        return float(far)

    def _passes(self, part: Part, value: float) -> bool:
        over = self.over.with_fact(part.fact, value)
        return (over > self._hair) is not self.broken

    @property
    def _hair(self) -> float:
        return _HAIR * max(1.0, abs(float(self.judged.limit)))


def standings(judged: Iterable[Judged]) -> Iterator[Standing]:
    """Of each judged number that may be off; of one with several limits the last of those that are in doubt. Where one of several on
    the same side is broken as it is, a rule tells that, and what else it may be."""
    every, still = tuple(judged), set[int]()
    found: dict[str, Standing] = {}
    limits = Counter((each.what, each.at_most) for each in every)
    told: set[str] = set()
    for each in every:
        if not any(isinstance(one, Term) and rests_on_unsure(one, still) for one in (each.value, each.limit)):
            continue
        standing = Standing(each)
        if limits[each.what, each.at_most] > 1 and standing.broken:
            told.add(each.what)
        if each.what not in found or standing.in_doubt:
            found[each.what] = standing
    for what, standing in found.items():
        standing.told_elsewhere = what in told
        yield standing


def _end(value: Term, upper: bool) -> float:
    bounds = Range(value).bounds
    return float(value) if bounds is None else bounds[upper]
