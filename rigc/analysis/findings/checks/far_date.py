"""A reading, the length of a built lead, a field note, a release or the end of an acceptance is dated years from the day of the revision.

Why it matters: 2062 for 2026 makes a reading the latest for ever, and an acceptance one that never ends.
What to do: correct the year; or, where the date is right, give the revision its own day.
Told is what lies more than {guesses.FAR_MONTHS} before or after it.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.findings.dated import Dated
from rigc.analysis.findings.months import months_before
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.facts.guesses import FAR_MONTHS
from rigc.model.rig import Rig

KIND = Kind(
    "far-date",
    Level.WARNING,
    __doc__,
    f"what is done with the board is dated no more than {FAR_MONTHS} from the revision",
    "common practice, no source",
)


def far_date(rig: Rig, dated: Dated) -> Iterator[Diagnostic]:
    """One finding for each such date; none where the revision has none."""
    day = rig.head.date
    if not day:
        return
    months = round(FAR_MONTHS.value)
    for act in dated.acts:
        late, early = months_before(act.date, months) > day, act.date < months_before(day, months)
        if late or early:
            side = "after" if late else "before"
            yield KIND.at(
                act.span,
                f"{act.words} {act.date}, more than {months // 12} years {side} revision {rig.head.letter} of {day}",
                subject=(act.subject,),
                label="dated here",
                also=(Label(rig.head.span, "the revision is declared here"),),
                help="correct the year, or give the revision its own day",
            )


CHECK = far_date
