"""Two amps that are used together have unequal polarity, counted from the instrument to the loudspeaker.

Why it matters: the two loudspeakers pull while the other pushes; between them the bass is gone.
What to do: use the polarity switch of one amp or isolator, or move the inverting unit to before the split.
Source: physics (a sum of equal and opposite pressures). Isolators and amps count too. What one of them does not say
(`inverts`, `non-inverting`) can't be checked; a passive unit without a transformer turns nothing over.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.parallel.parallel import AMPS, Parallel
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.analysis.signal.parallel.turned_words import counted, unsaid, way_out, when_turned
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "amps-against-each-other",
    Level.WARNING,
    __doc__,
    "amps used together have the same polarity in every on/off state",
    "physics: equal and opposite pressures cancel",
)


def amps_against_each_other(rig: Rig, paths: ParallelPaths) -> Iterator[Diagnostic]:
    """One finding for each set of amps; can't-check for each unit of unknown polarity that only some of them hear, and
    for each set where units do not say theirs."""
    unsure: dict[str, str] = {}
    for each in (each for each in paths.all if each.kind == AMPS):
        if each.turned:
            yield _told(rig, each)
        elif each.unsaid and not each.unsure:
            yield unsaid(KIND, rig, each, f"the amps {each.at} agree")
        else:
            unsure.update(dict.fromkeys(each.unsure, each.at))
    for name, amps in unsure.items():
        yield KIND.cant_check(
            rig.units[name].declared,
            f"nobody has measured whether '{name}' inverts; whether the amps {amps} agree can't be checked",
            subject=(name,),
            help=f"measure it, and write `inverts` or `non-inverting` in '{name}'",
        )


def _told(rig: Rig, paths: Parallel) -> Diagnostic:
    against = next(each for on in reversed(paths.states) if (each := paths.against(on)))
    names = tuple(dict.fromkeys(name for each in paths.combing for name in (*each.turning, *each.turned)))
    amps = tuple(each.label for each in against)
    where = f" in {', '.join(paths.scenarios)}" if paths.scenarios else ""
    return KIND.at(
        paths.span,
        f"{listed(amps)} {'is' if len(amps) == 1 else 'are'} turned against '{paths.combing[0].label}' {when_turned(paths)}{where}",
        subject=(*amps, paths.combing[0].label, *names),
        label="against this amp",
        also=tuple(Label(rig.units[name].declared, f"'{name}' inverts") for name in names),
        note=counted(paths),
        help=way_out(paths, f"use the polarity switch of '{amps[0]}'"),
    )


CHECK = amps_against_each_other
