"""The source tells which fuse a thing has, and no spare of it travels.

Why it matters: a fuse of another rating or characteristic protects nothing, or blows again; without a spare the supply stays dark.
What to do: carry two of each, and say so in a spares block: `2 of "fuse T 630 mA 5 x 20 mm" in "lid pocket"`. A fuse is
replaced once, by its like; one that blows again tells of a fault, which is for a competent person.
Asked of gigging, touring and fly rigs, for the fuses that are the right ones in a scenario of the rig.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.fuses import FittedFuse, Fuses
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.things import Fuse

KIND = Kind(
    "no-spare-fuse",
    Level.REMARK,
    __doc__,
    "a spare of each stated fuse travels with a gigging, touring or fly rig",
    "common practice, no source",
)


def no_spare_fuse(rig: Rig, fuses: Fuses) -> Iterator[Diagnostic]:
    """One for each fuse without a spare; things with the same fuse share it."""
    if rig.head.rig_class not in ("gigging", "touring", "fly"):
        return
    lacking: dict[str, list[FittedFuse]] = {}
    for each in fuses.all:
        if each.wanted and not each.spares:
            lacking.setdefault(each.fuse.words, []).append(each)
    for words, every in lacking.items():
        names = tuple(dict.fromkeys(each.thing for each in every))
        yield KIND.at(
            every[0].fuse.span,
            f"no spare travels of the fuse {words} of {listed(names)}",
            subject=names,
            label="this fuse",
            help=f'carry two, and say so in a spares block: `2 of "{_told(every[0].fuse)}"`',
        )


def _told(fuse: Fuse) -> str:
    size = "" if fuse.size_mm is None else f" {fuse.size_mm[0]:g} x {fuse.size_mm[1]:g} mm"
    return " ".join(filter(None, ("fuse", fuse.kind, fuse.rating_ma.typed))) + size


CHECK = no_spare_fuse
