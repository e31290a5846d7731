"""Paths that run side by side and join again differ in latency by more than 0.5 ms.

Why it matters: the sum is a comb filter; whole bands go, the first at half the reciprocal of the difference.
What to do: move the late unit out of the parallel path, give the other path the same delay, or use one whose dry sound
stays analogue.
Source: physics for the nulls, (2k + 1) / (2 tau); common practice, no source, for the 0.5 ms.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.parallel_paths import ParallelPaths
from rigc.analysis.signal.leg import latency_ms
from rigc.analysis.signal.parallel import AMPS, DESK, JOIN, Parallel
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.paths import LATENCY_APART_MS
from rigc.model.rig import Rig

KIND = Kind(
    "paths-late",
    Level.WARNING,
    __doc__,
    "paths that join again differ in latency by at most 0.5 ms",
    "physics: nulls at (2k + 1) / (2 tau); common practice, no source, for 0.5 ms",
)


def paths_late(rig: Rig, paths: ParallelPaths) -> Iterator[Diagnostic]:
    """One finding for each place where paths meet; can't-check for each unit of unknown latency, and amp of unknown mix."""
    unsure: dict[str, str] = {}
    for each in paths.all:
        if each.kind in (AMPS, DESK) or len(each.legs) < 2:
            continue
        late = each.apart_ms is not None and each.apart_ms > LATENCY_APART_MS.value + 1e-9
        if each.mix is None and each.kind != JOIN:
            if late or each.untimed:
                unsure.setdefault(each.at, f"'{each.at}' does not say whether its loop is in series or parallel")
        elif late:
            yield _told(rig, each)
        else:
            unsure.update({name: f"'{name}' does not say its latency" for name in each.untimed})
    for name, why in unsure.items():
        yield KIND.cant_check(
            rig.units[name].declared,
            f"{why}; whether the paths beside it make a comb filter can't be checked",
            subject=(name,),
            help=f"measure it and write it in '{name}' (`latency 3 ms`, or `dry analogue`)"
            if name in {each for path in paths.all for each in path.untimed}
            else f"write `series` or `parallel` behind the loop of '{name}'",
        )


def _told(rig: Rig, paths: Parallel) -> Diagnostic:
    late, early, apart = paths.late, paths.early, paths.apart_ms or 0.0
    slow = [name for name in late.things if name in rig.units and latency_ms(rig.units[name])]
    nulls = [decimals(each, 0) for each in paths.nulls_hz]
    return KIND.at(
        paths.span,
        f"at '{paths.at}', '{late.label}' comes {decimals(apart, 2)} ms after '{early.label}': "
        f"nulls at {', '.join(nulls[:-1])} and {nulls[-1]} Hz",
        subject=(paths.at, *slow),
        label="the paths meet here",
        also=tuple(Label(fact.span, f"'{name}' is late") for name in slow if (fact := rig.units[name].latency_ms)),
        numbers=(
            Number("difference", apart, "ms"),
            Number("limit", LATENCY_APART_MS.value, "ms"),
            *(Number(f"null {place}", each, "Hz") for place, each in enumerate(paths.nulls_hz, start=1)),
        ),
        help=f"move '{slow[0]}' out of the parallel path" if slow else "make the paths equally late",
    )


CHECK = paths_late
