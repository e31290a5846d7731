"""How an audio lead meets one that feeds power: `A5.D4.angle`, `.parallel`, `.distance`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.crossings import Crossing, Crossings
from rigc.analysis.computations.leads import Lead
from rigc.analysis.computations.route_paths import RoutePath, RoutePaths
from rigc.analysis.reasons.inputs import ours, placed
from rigc.diagnostics.figures import nearest_tenth
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM
from rigc.traced.reason import ARITHMETIC, Input, Reason


def lead_crossing(crossings: Crossings, paths: RoutePaths) -> Iterator[Reason]:
    """One reason for the angle of a pair that crosses, two for one that runs side by side."""
    for each in crossings.all:
        one, other = paths.paths[each.one.mark], paths.paths[each.other.mark]
        ways = (_way(each.one, one), _way(each.other, other))
        name = f"{each.one.mark}.{each.other.mark}"
        if each.angles:
            yield _angle(name, each, ways)
        if each.parallel_mm:
            yield from _beside(name, each, ways)


def _way(lead: Lead, path: RoutePath) -> Input:
    spots = [f"({nearest_tenth(x)}, {nearest_tenth(y)})" for x, y in path.points]
    return placed(f"{lead.mark} runs through", " ".join(spots), lead.span)


def _angle(name: str, each: Crossing, ways: tuple[Input, ...]) -> Reason:
    found = [f"{angle:.0f}" for angle in each.angles]
    value = ", ".join(dict.fromkeys(found))
    told = ", ".join(
        f"{angle}° at {found.count(angle)} point{'s' * (found.count(angle) > 1)}" for angle in dict.fromkeys(found)
    )
    rule = "the lesser angle between the two at each crossing on one side of the deck; 0: one lies on the other"
    return Reason(f"{name}.angle", value, "°", told, ways, rule, "geometry on reckoned ways")


def _beside(name: str, each: Crossing, ways: tuple[Input, ...]) -> Iterator[Reason]:
    fact = BESIDE_DC_MM if each.other.signal == "dc" else BESIDE_AC_MM
    value, terms = nearest_tenth(each.parallel_mm), " + ".join(nearest_tenth(long) for long, _ in each.runs_mm)
    rule = "runs beside each other on one side of the deck, nearer than the distance at which they count"
    yield Reason(f"{name}.parallel", value, "mm", f"{terms} = {value}", (*ways, ours(fact)), rule, ARITHMETIC)
    value, terms = nearest_tenth(each.nearest_mm), ", ".join(nearest_tenth(apart) for _, apart in each.runs_mm)
    yield Reason(
        f"{name}.distance", value, "mm", f"least of {terms} = {value}", ways, "the nearest of these runs", ARITHMETIC
    )


REASONS = lead_crossing
