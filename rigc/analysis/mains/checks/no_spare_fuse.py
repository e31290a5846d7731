"""The source tells which fuse a thing has, and no spare of it travels.

Why it matters: a fuse of another rating or characteristic protects nothing, or blows again; without a spare the supply stays dark.
What to do: carry two of each, and say so in a spares block: `2 of "fuse T 630 mA 5 x 20 mm" in "lid pocket"`. A fuse is
replaced once, by its like; one that blows again tells of a fault, which is for a competent person.
Asked of gigging, touring and fly rigs, for the fuses that are the right ones in a scenario of the rig.
Source: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.analysis.mains.fuses import FittedFuse, Fuses, same_rating
from rigc.analysis.mains.small_fuses import SmallFuses
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.records import Spare
from rigc.model.rig import Rig
from rigc.model.things import Fuse

KIND = Kind(
    "no-spare-fuse",
    Level.REMARK,
    __doc__,
    "a spare of each stated fuse travels with a gigging, touring or fly rig",
    "common practice, no source",
)


def no_spare_fuse(rig: Rig, fuses: Fuses, small: SmallFuses) -> Iterator[Diagnostic]:
    """One for each fuse without a spare; things with the same fuse share it. Of one that carries too little that is told: it may be a slip."""
    wrong = [each.fitted for each in small.all]
    if rig.head.rig_class not in ("gigging", "touring", "fly"):
        return
    lacking: dict[str, list[FittedFuse]] = {}
    for each in fuses.all:
        if each.wanted and not each.spares and each not in wrong:
            lacking.setdefault(each.fuse.words, []).append(each)
    for words, every in lacking.items():
        other = _of_another_kind(rig, fuses, every[0].fuse) or (
            _of_another_rating(rig, fuses) if len(lacking) == 1 else None
        )
        line = f'2 of "{_told(every[0].fuse)}"'
        names = tuple(dict.fromkeys(each.thing for each in every))
        yield KIND.at(
            every[0].fuse.span,
            f"no spare travels of the fuse {words} of {listed(names)}"
            + (f"; '{other.what}' is another" if other else ""),
            subject=names,
            label="this fuse",
            also=(Label(other.span, "no fuse of the rig"),) if other else (),
            mends=_in_its_place(other, line) if other else (),
            help="" if other else f"carry two, and say so in a spares block: `{line}`",
        )


def _of_another_kind(rig: Rig, fuses: Fuses, fuse: Fuse) -> Spare | None:
    """A spare fuse of that rating which fits none of the rig: it is quicker or slower, or of another size."""
    told = (spare for spare in rig.spares if "fuse" in spare.what.lower() and same_rating(spare.what, fuse))
    return next((spare for spare in told if not fuses.fitting(spare)), None)


def _of_another_rating(rig: Rig, fuses: Fuses) -> Spare | None:
    """The spare fuse that fits none of the rig, where one alone does not."""
    idle = [spare for spare in rig.spares if re.match(r"fuse\b", spare.what) and not fuses.fitting(spare)]
    return idle[0] if len(idle) == 1 else None


def _in_its_place(other: Spare, line: str) -> tuple[Mend, ...]:
    bag = f' in "{other.bag}"' if other.bag else ""
    return (Mend(f"carry two of it in its place: `{line}`", (Replace(other.span, f"{line}{bag}"),)),)


def _told(fuse: Fuse) -> str:
    size = "" if fuse.size_mm is None else f" {fuse.size_mm[0]:g} x {fuse.size_mm[1]:g} mm"
    return " ".join(filter(None, ("fuse", fuse.kind, fuse.rating_ma.typed))) + size


CHECK = no_spare_fuse
