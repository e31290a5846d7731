"""Paths that run side by side -> the differences in latency that guesses drive near their limit."""

from __future__ import annotations

from rigc.analysis.findings.near_limit import NearLimit, by_share, carried, guess_of, nearest_of_each, told_off
from rigc.analysis.signal.parallel.parallel import between
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.facts.guesses import LATENCY_SPREAD
from rigc.facts.paths import LATENCY_APART_MS
from rigc.traced.term import Term


def latencies_near(paths: ParallelPaths) -> list[NearLimit]:
    """By how much the legs that make a comb are apart, in ms."""
    found = []
    for each in paths.all:
        apart = between(leg.latency for leg in each.combing) if len(each.combing) > 1 else None
        if not isinstance(apart, Term):
            continue
        what = f"the difference between the paths at '{each.at}'"
        found += [
            NearLimit(guess_of(one), what, float(apart), LATENCY_APART_MS.value, "ms", told_off(LATENCY_SPREAD))
            for one in carried(apart, LATENCY_APART_MS.value, by_share(LATENCY_SPREAD))
        ]
    return nearest_of_each(found)
