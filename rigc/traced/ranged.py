"""A traced number and what its facts may be off by -> the range in which it lies, and what each fact makes of that.

Each fact may be anything within its spread, whatever the others are. Where a fact comes into a number once, interval
arithmetic gives the range itself. Where it comes in more than once, intervals alone are too wide; then the slopes of the
number with that fact are bounded over all that the facts may be (automatic differentiation with intervals, from the
result back): where they are all of one sign the number moves one way only, so the fact is put at its ends. So two corners are
enough for any number of facts. Facts for which that can't be shown are cut in halves where they are few; what then remains in
doubt makes an outer bound: the range is `at most` that.
Source: interval analysis with the monotonicity test, a textbook method, from memory.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cached_property
from typing import Any

from rigc.model.fact import Fact, Spread, spread_of
from rigc.record import Record
from rigc.traced.figure import Basis, Told, parts_of
from rigc.traced.given import Stated
from rigc.traced.interval import NOTHING, ONE, Interval, added, hull, multiplied
from rigc.traced.revalued import Place, facts_in, parts_first, place_of
from rigc.traced.term import How, Term, Unknown

MayBe = Callable[[Fact[Any]], Spread | None]
"""From where to where a fact may lie; None of one that is taken as it stands."""

_HALVINGS = 4  # of facts, one after the other, to 16 pieces; where more facts are in doubt, halves settle little
_HAIR = 1e-12


class Part(Record):
    """What one fact makes of a range: what the number would be with this fact at one end and at the other, the others as stated."""

    fact: Stated
    spread: Spread
    ends: Interval

    @property
    def width(self) -> float:
        """By how much the number moves with it."""
        return self.ends[1] - self.ends[0]


class Range:
    """A number with what the facts behind it may be. What it tells is reckoned when it is asked for.

    `beside` are facts that may be off too and that decided about the number without being one in it: which way a lead goes.
    The range holds as long as they decide as they did.
    """

    def __init__(self, value: Term | Unknown | Told, may_be: MayBe = spread_of) -> None:
        self.value = value
        self._nodes = _Nodes(value, may_be) if isinstance(value, Term) else None
        self._may_be = may_be

    @property
    def facts(self) -> tuple[Stated, ...]:
        """The facts in it that may be off."""
        return () if self._nodes is None else tuple(self._nodes.facts.values())

    @cached_property
    def beside(self) -> tuple[Stated, ...]:
        """The facts that may be off and are no numbers in it."""
        return tuple(_beside(self.value, self._may_be))

    @property
    def bounds(self) -> Interval | None:
        """The least and the most that it may be; None where that can't be told."""
        return self._enclosed[0]

    @property
    def exact(self) -> bool:
        """Whether it can come to be both; else it is at most that."""
        return self._enclosed[1]

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """What each fact makes of it, the one that makes most first; without those that do nothing."""
        if self._nodes is None or self.bounds is None:
            return ()
        found = (self._part(self._nodes, place) for place in self._nodes.facts)
        hair = _HAIR * max(1.0, abs(float(self._nodes.root)))
        return tuple(sorted((each for each in found if each.width > hair), key=lambda each: -each.width))

    def with_fact(self, fact: Stated, value: float) -> float:
        """The number with this value of one fact, in the fact's unit, and the others as stated."""
        assert self._nodes is not None  # it has that fact
        return self._nodes.revalued(place_of(fact.fact.span), fact.counted(value))

    @cached_property
    def _enclosed(self) -> tuple[Interval | None, bool]:
        if self._nodes is None or not self._nodes.facts:
            return None, False
        return self._nodes.enclosed(self._nodes.box, _HALVINGS)

    @staticmethod
    def _part(nodes: _Nodes, place: Place) -> Part:
        middle = float(nodes.root)
        ends = [nodes.revalued(place, each) for each in nodes.box[place]]
        fact = nodes.facts[place]
        return Part(fact, nodes.spreads[place], (min(*ends, middle), max(*ends, middle)))


def rests_on_unsure(value: Term, still: set[int]) -> bool:
    """Whether a fact in a number may be off. `still` has the ids of terms that are known to rest on none, and gains those found
    so; all numbers asked about must be kept as long as it is used."""
    seen: set[int] = set()
    waiting: list[Term | Unknown] = [value]
    while waiting:
        each = waiting.pop()
        at = id(each)
        if at in still or at in seen:
            continue
        seen.add(at)
        how = each.how
        if isinstance(how, Stated) and spread_of(how.fact) is not None:
            return True
        waiting += how.of
    still |= seen
    return False


def _beside(value: Term | Unknown | Told, may_be: MayBe) -> Iterator[Stated]:
    """Each once, in the order in which they are met."""
    own = facts_in(value) if isinstance(value, Term) else {}
    told: set[Place] = set()
    seen: set[int] = set()
    waiting: list[Basis | Told] = [value]
    while waiting:
        each = waiting.pop()
        if id(each) in seen:
            continue
        seen.add(id(each))
        how = each.how if isinstance(each, (Term, Unknown)) else None
        if isinstance(how, Stated):
            place = place_of(how.fact.span)
            if place not in own and place not in told and may_be(how.fact) is not None:
                told.add(place)
                yield how
        waiting += reversed((*parts_of(each), *(each.beside if isinstance(each, Told) else ())))


class _Nodes:
    """What of a number moves with facts that may be off, each once and behind its parts."""

    def __init__(self, value: Term, may_be: MayBe) -> None:
        self.root = value
        self.box: dict[Place, Interval] = {}
        self.facts: dict[Place, Stated] = {}
        self.spreads: dict[Place, Spread] = {}
        self.moving: dict[int, tuple[Term, How]] = {}
        for each in parts_first(value):
            how = each.how
            if isinstance(how, Stated):
                spread = may_be(how.fact)
                if spread is not None:
                    place = place_of(how.fact.span)
                    self.box[place] = how.counted(spread.least), how.counted(spread.most)
                    self.facts[place], self.spreads[place] = how, spread
                    self.moving[id(each)] = each, how
                continue
            once = how.once()
            if any(id(part) in self.moving for part in once.of):
                self.moving[id(each)] = each, once

    def enclosed(self, box: Mapping[Place, Interval], halvings: int) -> tuple[Interval | None, bool]:
        """Bounds of the number where its facts are within these, and whether it can come to be both."""
        within = self._within(box)
        if within is None:
            return None, False
        steps, often = self._steps(within)
        doubtful = {place for place, (low, high) in steps.items() if low < 0 < high and often[place] > 1}
        ends = [self._at(box, steps, upper) for upper in (False, True)]
        bounds = [self._within(each) for each in ends]
        if bounds[0] is None or bounds[1] is None:
            return None, False
        outer = bounds[0][id(self.root)][0], bounds[1][id(self.root)][1]
        if not doubtful:
            return outer, True
        if len(doubtful) > halvings:
            return outer, False
        place = max(doubtful, key=lambda each: _reach(steps[each], box[each]))
        low, high = box[place]
        middle = (low + high) / 2
        halves = [self.enclosed({**box, place: half}, halvings - 1) for half in ((low, middle), (middle, high))]
        (one, first_exact), (other, second_exact) = halves
        if one is None or other is None:
            return outer, False
        return hull(one, other), first_exact and second_exact

    def revalued(self, place: Place, other: float) -> float:
        """What the number would be with this in place of the fact that stands there."""
        made: dict[int, float] = {}
        for node, how in self.moving.values():
            if not isinstance(how, Stated):
                made[id(node)] = how.value(*(_now(part, made) for part in how.of))
            elif place_of(how.fact.span) == place:
                made[id(node)] = other
        return made.get(id(self.root), float(self.root))

    def _within(self, box: Mapping[Place, Interval]) -> dict[int, Interval] | None:
        """The bounds of all that moves; None where one has none."""
        found: dict[int, Interval] = {}
        for node, how in self.moving.values():
            if isinstance(how, Stated):
                found[id(node)] = box[place_of(how.fact.span)]
                continue
            bounds = how.bounds(*(_bounds(part, found) for part in how.of))
            if bounds is None:
                return None
            found[id(node)] = bounds
        return found

    def _steps(self, within: Mapping[int, Interval]) -> tuple[dict[Place, Interval], dict[Place, int]]:
        """For each fact the slopes that the number may have with it, and how often it comes in."""
        slopes: dict[int, Interval] = {id(self.root): ONE}
        ways: dict[int, int] = {id(self.root): 1}
        steps: dict[Place, Interval] = dict.fromkeys(self.facts, NOTHING)
        often: dict[Place, int] = dict.fromkeys(self.facts, 0)
        for node, how in reversed(self.moving.values()):
            if (
                id(node) not in slopes
            ):  # only what a part of it was made of before it was made so that each comes in once
                continue
            mine, many = slopes[id(node)], ways[id(node)]
            if isinstance(how, Stated):
                place = place_of(how.fact.span)
                steps[place], often[place] = added(steps[place], mine), often[place] + many
                continue
            own = how.slopes(*(_bounds(part, within) for part in how.of))
            for part, slope in zip(how.of, own, strict=True):
                if id(part) in self.moving:
                    slopes[id(part)] = added(slopes.get(id(part), NOTHING), multiplied(mine, slope))
                    ways[id(part)] = ways.get(id(part), 0) + many
        return steps, often

    def _at(self, box: Mapping[Place, Interval], steps: Mapping[Place, Interval], upper: bool) -> dict[Place, Interval]:
        """Each fact with which the number moves one way only at the end where the number is highest, or least."""
        found = dict(box)
        for place, (low, high) in steps.items():
            if low >= 0 or high <= 0:
                end = box[place][(low >= 0) is upper]
                found[place] = end, end
        return found


def _now(part: Any, made: Mapping[int, float]) -> float:
    return made[id(part)] if id(part) in made else float(part)


def _bounds(part: Any, within: Mapping[int, Interval]) -> Interval:
    return within.get(id(part)) or (float(part), float(part))


def _reach(slope: Interval, box: Interval) -> float:
    """By how much a fact may move a number, at most."""
    return max(abs(slope[0]), abs(slope[1])) * (box[1] - box[0])
