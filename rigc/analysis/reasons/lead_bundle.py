"""How long leads of one class lie together: `bundle-1.together`, counted as the crossing list counts them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from rigc.analysis.cables.stretches import parallel_runs
from rigc.analysis.computations.bundles import Bundle, Bundles
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.route_paths import RoutePaths
from rigc.analysis.reasons.inputs import ours, placed
from rigc.analysis.reasons.reason import ARITHMETIC, Reason
from rigc.diagnostics.figures import millimetres
from rigc.facts.separation import BUNDLE_APART_MM, BUNDLE_LONG_MM


def lead_bundle(bundles: Bundles, leads: Leads, paths: RoutePaths) -> Iterator[Reason]:
    """One reason for each bundle."""
    spans = {lead.mark: lead.span for lead in leads.all}
    for number, bundle in enumerate(bundles.all, 1):
        one, other, runs = _longest(bundle, paths)
        value = _mm(bundle.longest_mm)
        formula = f"{one} beside {other}: {' + '.join(_mm(run / 10) for run in runs)} = {value}"
        inputs = (
            *(placed(mark, bundle.signal, spans[mark]) for mark in bundle.marks),
            ours(BUNDLE_APART_MM),
            ours(BUNDLE_LONG_MM),
        )
        rule = "the longest that two of them lie side by side below the deck"
        yield Reason(f"bundle-{number}.together", value, "mm", formula, inputs, rule, ARITHMETIC)


def _longest(bundle: Bundle, paths: RoutePaths) -> tuple[str, str, list[float]]:
    """The two leads that lie together longest, and their runs in tenths of a millimetre."""
    below = {mark: paths.paths[mark].side(False) for mark in bundle.marks}
    found = [
        (one, other, [long for long, _ in parallel_runs(below[one], below[other], BUNDLE_APART_MM.value * 10)])
        for one, other in combinations(bundle.marks, 2)
    ]
    return max(found, key=lambda each: sum(each[2]))


def _mm(length: float) -> str:
    return millimetres(round(length * 10))


REASONS = lead_bundle
