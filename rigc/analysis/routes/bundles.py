"""The ways of all leads in plan -> the leads of one class that lie together long enough to be laced into one bundle:
`bundle-1.together`."""

from __future__ import annotations

from itertools import combinations

from rigc.analysis.leads.leads import Leads
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.analysis.routes.stretches import parallel_runs
from rigc.facts.separation import BUNDLE_APART_MM, BUNDLE_LONG_MM
from rigc.record import Record
from rigc.traced.figure import Answer, Figure, known_figure
from rigc.traced.given import ours
from rigc.traced.means import alike, total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import NEAREST_TENTH


class Bundle(Record):
    """Leads of one class, each of which lies beside another of them, on one side of the deck. `together` is how
    long two of them lie together at the most, in mm."""

    signal: str
    marks: tuple[str, ...]
    together: Figure


class Bundles(Record):
    """All bundles, in the order of the leads."""

    all: tuple[Bundle, ...]


def bundles(leads: Leads, paths: RoutePaths) -> Bundles:
    """Joins leads that run side by side below the deck; over it each lead goes its own short way."""
    found: list[Bundle] = []
    for signal in dict.fromkeys(lead.signal for lead in leads.all):
        marks = [lead.mark for lead in leads.all if lead.signal == signal and lead.mark in paths.paths]
        below = {mark: paths.paths[mark].sides[1] for mark in marks}
        joined: dict[str, set[str]] = {mark: {mark} for mark in marks}
        together: dict[tuple[str, str], tuple[float, ...]] = {}
        for one, other in combinations(marks, 2):
            runs = parallel_runs(below[one], below[other], BUNDLE_APART_MM.value * 10)
            runs_mm = tuple(run / 10 for run, _ in runs)
            if sum(runs_mm) >= BUNDLE_LONG_MM.value:
                together[one, other] = runs_mm
                if joined[one] is not joined[other]:
                    joined[one] |= joined[other]
                    joined.update(dict.fromkeys(joined[other], joined[one]))
        for group in {id(group): group for group in joined.values() if len(group) > 1}.values():
            ordered = tuple(mark for mark in marks if mark in group)
            pairs = (pair for pair in together if pair[0] in group)
            longest = max(pairs, key=lambda pair: sum(together[pair]))
            ways = tuple(paths.told[mark] for mark in ordered)
            found.append(Bundle(signal, ordered, _together(len(found) + 1, longest, together[longest], ways)))
    return Bundles(tuple(found))


def _together(number: int, longest: tuple[str, str], runs_mm: tuple[float, ...], ways: tuple[Answer, ...]) -> Figure:
    return known_figure(
        f"bundle-{number}.together",
        total(map(alike, runs_mm)),
        NEAREST_TENTH,
        *ways,
        ours(BUNDLE_APART_MM),
        ours(BUNDLE_LONG_MM),
        rule=f"the longest that two of them, {longest[0]} and {longest[1]}, lie side by side below the deck",
        source=ARITHMETIC,
    )


COMPUTE = bundles
