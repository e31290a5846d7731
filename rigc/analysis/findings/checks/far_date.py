"""A reading, the length of a built lead, a field note, a release or the end of an acceptance is dated years from the day of the revision; or
the revision is dated years from all that has a date.

Why it matters: 2062 for 2026 makes a reading the latest for ever, and an acceptance one that never ends.
What to do: correct the year; or, where the date is right, give the revision its own day.
Told is what lies more than {guesses.FAR_MONTHS} before or after it; where all facts and all that was done do, it is the revision's own year
that is told, and no fact is called old by it.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.findings.months import months_before
from rigc.analysis.findings.strange_year import StrangeYear
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.facts.guesses import FAR_MONTHS
from rigc.model.rig import Rig

KIND = Kind(
    "far-date",
    Level.WARNING,
    __doc__,
    f"what is done with the board is dated no more than {FAR_MONTHS} from the revision",
    "common practice, no source",
)


def far_date(rig: Rig, strange: StrangeYear) -> Iterator[Diagnostic]:
    """One finding for each such date, or for the revision's where it is far from all of them; none where the revision has none."""
    day = rig.head.date
    if not day:
        return
    months = round(FAR_MONTHS.value)
    if strange.nearest:
        yield _of_the_revision(rig, strange, months // 12)
        return
    for each in strange.done:
        late, early = months_before(each.date, months) > day, each.date < months_before(day, months)
        if late or early:
            yield KIND.at(
                each.span,
                f"{each.words} {each.date}, more than {months // 12} years {'after' if late else 'before'} revision {rig.head.letter} of {day}",
                subject=(each.subject,),
                label="dated here",
                also=(Label(rig.head.span, "the revision is declared here"),),
                help="correct the year, or give the revision its own day",
            )


def _of_the_revision(rig: Rig, strange: StrangeYear, years: int) -> Diagnostic:
    day, at = rig.head.date, rig.head.dated or rig.head.span
    when, side = ("after", "latest") if strange.nearest < day else ("before", "earliest")
    return KIND.at(
        at,
        f"revision {rig.head.letter} is of {day}, more than {years} years {when} all else that is dated, the {side} {strange.nearest}",
        subject=(rig.head.name,),
        label="dated here",
        mends=(Mend(f"write {strange.meant}, if that is meant", (Replace(at, strange.meant),)),)
        if strange.meant
        else (),
        help="correct its year",
    )


CHECK = far_date
