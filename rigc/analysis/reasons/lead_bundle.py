"""How long leads of one class lie together: `bundle-1.together`, counted as the crossing list counts them."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.bundles import Bundles
from rigc.analysis.computations.leads import Leads
from rigc.analysis.reasons.inputs import ours, placed
from rigc.diagnostics.figures import nearest_tenth
from rigc.facts.separation import BUNDLE_APART_MM, BUNDLE_LONG_MM
from rigc.traced.reason import ARITHMETIC, Reason


def lead_bundle(bundles: Bundles, leads: Leads) -> Iterator[Reason]:
    """One reason for each bundle."""
    spans = {lead.mark: lead.span for lead in leads.all}
    for number, bundle in enumerate(bundles.all, 1):
        value, (one, other) = nearest_tenth(bundle.longest_mm), bundle.longest
        formula = f"{one} beside {other}: {' + '.join(map(nearest_tenth, bundle.runs_mm))} = {value}"
        inputs = (
            *(placed(mark, bundle.signal, spans[mark]) for mark in bundle.marks),
            ours(BUNDLE_APART_MM),
            ours(BUNDLE_LONG_MM),
        )
        rule = "the longest that two of them lie side by side below the deck"
        yield Reason(f"bundle-{number}.together", value, "mm", formula, inputs, rule, ARITHMETIC)


REASONS = lead_bundle
