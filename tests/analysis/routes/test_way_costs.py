"""The costs of ways, worked out for what differs and what lies near alone, are those of all ways one by one."""

from __future__ import annotations

from itertools import combinations
from random import Random

from rigc.analysis.leads.leads import Lead
from rigc.analysis.routes.kept_apart import apart_mm
from rigc.analysis.routes.stretches import Side, Spot, crossings, parallel_runs, side_of
from rigc.analysis.routes.way_costs import FACTOR, LeadSides, way_costs
from rigc.facts.separation import LEAST_ANGLE_DEG
from rigc.model.jacks import Port
from rigc.source import Source, Span

HERE = Span(Source("leads.rig", "lead"), 0, 4)


def lead(mark: str, signal: str) -> Lead:
    jacks = Port("out", mark), Port("in", mark)
    return Lead(
        mark, signal, *jacks, False, ("angle", "angle"), False, "thin", None, None, None, False, "", None, None, None,
        False, False, HERE,
    )  # fmt: skip


def some_side(dice: Random) -> Side:
    """Up to four stretches in tenths of a millimetre, most of them along an axis, on a board of 200 mm."""

    def spot() -> Spot:
        return dice.randint(0, 20) * 100.0, dice.choice((dice.randint(0, 20) * 100.0, dice.randint(0, 2000) / 1.0))

    at, stretches = spot(), []
    for _ in range(dice.randint(0, 4)):
        to, turn = spot(), dice.random()
        to = (to[0], at[1]) if turn < 0.45 else (at[0], to[1]) if turn < 0.9 else to
        stretches.append((at, to))
        at = to
    return side_of(tuple(stretches))


def alone(one: tuple[Side, Side], other: tuple[Side, Side], within: float, weight: int) -> int:
    """Every side of every way, with nothing left out."""
    cost = 0
    for mine, theirs in zip(one, other, strict=True):
        for long, apart in parallel_runs(mine, theirs, within):
            cost += round(long) * weight + (FACTOR**3 if apart == 0 else 0)
        if mine.askew or theirs.askew:
            cost += sum(0 < angle < LEAST_ANGLE_DEG.value for angle in crossings(mine, theirs)) * FACTOR**3
    return cost


def test_as_one_by_one() -> None:
    for seed in range(150):
        dice = Random(seed)
        leads = []
        for at in range(dice.randint(2, 6)):
            above = [some_side(dice), some_side(dice)]
            ways = tuple((dice.choice(above), some_side(dice)) for _ in range(dice.randint(1, 5)))
            leads.append(LeadSides(lead(f"L{at}", dice.choice(("audio", "audio", "dc", "ac"))), ways))
        hearing = frozenset(each.lead.mark for each in leads if dice.random() < 0.3)
        costs = way_costs(leads, hearing, frozenset())
        for first, second in combinations(range(len(leads)), 2):
            one, other = leads[first], leads[second]
            within = apart_mm(one.lead, other.lead)
            weight = FACTOR**2 if {one.lead.mark, other.lead.mark} & hearing else FACTOR
            alike = [[alone(a, b, (within or 0) * 10, weight) for b in other.ways] for a in one.ways]
            if within is None or len(one.ways) == len(other.ways) == 1 or not any(map(any, alike)):
                assert (first, second) not in costs, seed
            else:
                assert costs[first, second] == tuple(map(tuple, alike)), seed
