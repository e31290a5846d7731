"""Paths that run side by side and join again differ in latency by more than {paths.LATENCY_APART_MS}.

Why it matters: the sum is a comb filter; whole bands go, of two paths the first at half the reciprocal of the difference.
What to do: move the late unit out of the parallel path, give the other path the same delay, or use one whose dry sound
stays analogue.
Source: physics for the notches, where |Σ ±g exp(-j 2 pi f tau)| of all paths is least, with everything on and at equal
shares where none are said; common practice, no source, for the {paths.LATENCY_APART_MS}. Amps meet in the air and the inputs of a desk where
it sums them. A delay or reverb that is `set wet` lets no sound through that could make a comb.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.parallel.comb_words import notches_told
from rigc.analysis.signal.parallel.leg import latency_ms
from rigc.analysis.signal.parallel.parallel import AMP_LOOP, AMPS, DESK, Parallel
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.paths import LATENCY_APART_MS
from rigc.model.rig import Rig

KIND = Kind(
    "paths-late",
    Level.WARNING,
    __doc__,
    f"paths that join again differ in latency by at most {LATENCY_APART_MS}",
    f"physics: notches where |Σ ±g exp(−j 2πfτ)| is least; common practice, no source, for {LATENCY_APART_MS}",
)

_NOTES = {
    AMPS: "amps meet in the air: the notches move with the listener and with each microphone",
    DESK: "heard where the desk sums them",
}


def paths_late(rig: Rig, paths: ParallelPaths) -> Iterator[Diagnostic]:
    """One finding for each place where paths meet; can't-check for each unit of unknown latency, and amp of unknown mix."""
    unsure: dict[str, str] = {}
    for each in paths.all:
        if len(each.combing) < 2:
            continue
        if each.mix is None and each.kind == AMP_LOOP:
            if each.too_late or each.untimed:
                unsure.setdefault(each.at, f"'{each.at}' does not say whether its loop is in series or parallel")
        elif each.too_late:
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
    late, early, apart = paths.late, paths.early, paths.comb_ms or 0.0
    slow = [name for name in late.things if name in rig.units and latency_ms(rig.units[name])]
    found = paths.notches
    comb = f": {notches_told(found)}" if found else ""
    shares = "" if paths.shared_out or not found else " at equal shares"
    return KIND.at(
        paths.span,
        f"{_where(paths)}'{late.label}' comes {decimals(apart, 2)} ms after '{early.label}'{comb}{shares}",
        subject=(*paths.at.split(", "), *slow),
        label="the paths meet here",
        also=tuple(Label(fact.span, f"'{name}' is late") for name in slow if (fact := rig.units[name].latency_ms)),
        numbers=(
            Number("difference", apart, "ms"),
            Number("limit", LATENCY_APART_MS.value, "ms"),
            *(Number(f"notch {place}", each.hertz, "Hz") for place, each in enumerate(found, start=1)),
        ),
        note=_NOTES.get(paths.kind, ""),
        help=_way_out(paths, slow),
    )


def _where(paths: Parallel) -> str:
    return "" if paths.kind in (AMPS, DESK) else f"at '{paths.at}', "


def _way_out(paths: Parallel, slow: list[str]) -> str:
    if not slow:
        return "make the paths equally late"
    if paths.kind in (AMPS, DESK):
        return f"move '{slow[0]}' to before the split, so that all of them hear it"
    return f"move '{slow[0]}' out of the parallel path"


CHECK = paths_late
