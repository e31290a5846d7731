"""Reasons -> what is wrong with them: formulas that their own printed digits deny, and parts that are lacking or say otherwise."""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

from worked_formula import equations, unread

from rigc.analysis.reasoning import Reasoning
from rigc.analysis.results import Results

# What has a number in it and an equals sign behind, and is told in words or by a rule that is no arithmetic.
IN_WORDS = [
    r"\d+ stops before '[^']+', and \d+",
    r"\|Σ \(x₁ y₂ − x₂ y₁\)\| / 2",
    r"20 log10 \|V\(\d+ Hz\)\|",
    r"\|V\(f\)\| is \|V\(\d+ Hz\)\| / √2 at f",
    r"of [\d., ]+ the nearest to y|[\d.]+ that is free at x",
    r"[A-Z]+\d+[a-z]?, here|.*, far",
    r"[\d.]+ × \(n − 0\.5\) / \d+ for n",
    r"1, \d more for .*",
    r".*[gτ]",
    r"90 % of \(.*\), its own share of that .*",
    r"[\d, ]+: (\(k \+ 1/2\)|k) × 1000 / [\d.]+",
]


class Judged(NamedTuple):
    """How many equations were reckoned, and what is wrong."""

    reckoned: int
    wrong: list[str]


def judged(results: Results) -> Judged:
    """Every reason of a rig: each formula reckoned by its own printed digits, each input held against the reason that it names."""
    reasoning = Reasoning(results)
    wrong, count = _hanging(reasoning), 0
    for name, reason in reasoning.by_name.items():
        true, odd = _reckoned(reason.formula)
        count += len(true)
        if not all(true) or odd:
            wrong.append(f"{name}: {reason.formula} {odd}")
    return Judged(count, wrong)


def _hanging(reasoning: Reasoning) -> list[str]:
    """Inputs whose reason there is not, or gives another value; reasons that lack a part."""
    wrong = []
    for reason in reasoning.by_name.values():
        if not (reason.value and reason.formula and reason.rule and reason.source):
            wrong.append(f"{reason.name} lacks a part")
        for each in reason.inputs:
            behind = reasoning.by_name.get(each.why)
            if each.why and (behind is None or (behind.value, behind.unit) != (each.value, each.unit)):
                wrong.append(f"{reason.name} says {each.value} {each.unit} of {each.why}")
    return wrong


@cache
def _reckoned(formula: str) -> tuple[tuple[bool, ...], tuple[str, ...]]:
    """Whether each of its equations is true, and the sides that are neither arithmetic nor known to be told in words."""
    odd = (side for side in unread(formula) if not any(re.fullmatch(words, side) for words in IN_WORDS))
    return tuple(each.true for each in equations(formula)), tuple(odd)
