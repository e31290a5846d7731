"""Ranges against draws, Monte Carlo with a fixed seed: for every figure of rigs in which each stated quantity may be 10 % off.

The draws are uniform within what the facts may be, or corners of that: all of them where four facts or fewer come into the
number, else chance ones; and those to which each fact by itself
drives the number, moved by what it may be off or by three times as much, so that it shows through roundings. No draw lies outside the range, and the range is at most twice as wide as the draws lie apart.
"""

from __future__ import annotations

from functools import cache
from itertools import product
from random import Random
from typing import Any

import pytest
from cases import ROOT, results_of

from rigc.analysis.reasoning import told
from rigc.files.disk import Disk
from rigc.model.fact import Fact, Spread
from rigc.traced.figure import Figure
from rigc.traced.interval import Interval
from rigc.traced.ranged import Range
from rigc.traced.revalued import Place, place_of, revalued

RIGS = {
    "examples/back-bedroom/board.rig": 2,
    "examples/harbour-keys/board.rig": 2,
    "examples/tide-line/board.rig": 2,
    "tests/rigs/salt-pan.rig": 1,
    "examples/long-haul/board.rig": 11,
}
"""Each with the step in which its figures are tried: every one, or only some of them."""

WIDE = {
    "spare": "what remains of a length that is rounded up: how far rounding goes is no slope",
    "total": "what is cut and such a remainder",
    "premade-more": "the difference of two lengths that are taken from a list",
    "brighter": "two resonances that share an inductance, which goes out only where they are divided",
}
"""Figures, by the end of their names, of which the range may be wider, and why; it holds all draws, and says `at most`."""

NOT_KNOWN = {
    "q": "it rises and falls with the inductance",
    "peak": "searched on the response",
    "peak-level": "searched on the response",
    "fallen": "searched on the response",
    "level-": "the response at a frequency may rise and fall with each part",
    "hz": "the response at a frequency may rise and fall with each part",
    "loss": "nothing loads it in some state",
    "least": "the circuit is solved for it",
    "most": "the circuit is solved for it",
    "return": "the circuit is solved for it",
}
"""Figures, by the end of their names, that have no range, and why."""

UNIFORM, CORNERS, FEW = 8, 4, 4


def may_be(fact: Fact[Any]) -> Spread | None:
    value = fact.value
    if not isinstance(value, float) or not value:
        return None
    return Spread(value - abs(value) / 10, value + abs(value) / 10, "+- 10 %")


@cache
def figures_of(path: str) -> dict[str, Figure]:
    disk = Disk(ROOT / path)
    results = results_of(disk, disk.name, effort=0, advice=False)
    return {name: each for name, each in told(results).items() if isinstance(each, Figure)}


def drawn(value: Figure, made: Range, rng: Random) -> tuple[float, float]:
    """The least and the highest of the draws."""
    box = {place_of(each.fact.span): _ends(each) for each in made.facts}
    every = []
    for far in (0, 1):
        rises = {place: _rises(value, place, ends, far) for place, ends in box.items()}
        every += [{place: ends[rises[place] is up] for place, ends in box.items()} for up in (False, True)]
    every += [{place: rng.uniform(*ends) for place, ends in box.items()} for _ in range(UNIFORM)]
    if len(box) <= FEW:
        every += [dict(zip(box, ends, strict=True)) for ends in product(*box.values())]
    else:
        every += [{place: rng.choice(ends) for place, ends in box.items()} for _ in range(CORNERS)]
    values = [revalued(value, each) for each in every]
    return min(values), max(values)


def _rises(value: Figure, place: Place, ends: Interval, far: int) -> bool:
    more = far * (ends[1] - ends[0])
    return revalued(value, {place: ends[1] + more}) >= revalued(value, {place: ends[0] - more})


def _ends(fact: Any) -> Interval:
    spread = may_be(fact.fact)
    assert spread is not None
    return fact.counted(spread.least), fact.counted(spread.most)


@pytest.mark.parametrize("path", RIGS)
def test_a_range_holds_all_draws_and_is_not_much_wider(path: str) -> None:
    rng = Random(20260214)
    bounded = 0
    for name, value in list(figures_of(path).items())[:: RIGS[path]]:
        made = Range(value, may_be)
        if not made.facts:
            continue
        field = name.rpartition(".")[2]
        if made.bounds is None:
            assert any(field.endswith(each) or each in field for each in NOT_KNOWN), name
            continue
        bounded += 1
        hair = 1e-9 * max(1.0, abs(value))
        low, high = drawn(value, made, rng)
        least, most = made.bounds
        assert least - hair <= low and high <= most + hair, name
        assert least - hair <= value <= most + hair, name
        if field in WIDE:
            assert most - least <= 2 * (high - low) + hair or not made.exact, name
            continue
        assert most - least <= 2 * (high - low) + hair, name
    assert bounded > 100
