"""A reading, the length of a built lead, a field note, a release or the end of an acceptance is dated years from the day of the revision.

Why it matters: 2062 for 2026 makes a reading the latest for ever, and an acceptance one that never ends.
What to do: correct the year; or, where the date is right, give the revision its own day.
Told is what lies more than {guesses.FAR_MONTHS} before or after it.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.findings.months import months_before
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.facts.guesses import FAR_MONTHS
from rigc.model.rig import Rig
from rigc.source import Span

KIND = Kind(
    "far-date",
    Level.WARNING,
    __doc__,
    f"what is done with the board is dated no more than {FAR_MONTHS} from the revision",
    "common practice, no source",
)


def far_date(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such date; none where the revision has none."""
    day = rig.head.date
    if not day:
        return
    months = round(FAR_MONTHS.value)
    for subject, what, date, span in _dated(rig):
        late, early = months_before(date, months) > day, date < months_before(day, months)
        if late or early:
            yield KIND.at(
                span,
                f"{what} {date}, more than {months // 12} years {'after' if late else 'before'} revision {rig.head.letter} of {day}",
                subject=(subject,),
                label="dated here",
                also=(Label(rig.head.span, "the revision is declared here"),),
                help="correct the year, or give the revision its own day",
            )


def _dated(rig: Rig) -> Iterator[tuple[str, str, str, Span]]:
    """What it is about, its words, its date and its place; of what bears one."""
    for reading in rig.readings:
        yield reading.point, f"test {reading.test} at {reading.point} was read on", reading.date, reading.span
    for block in rig.as_built:
        for lead in block.leads:
            if lead.date:
                yield lead.mark, f"{lead.mark} was measured on", lead.date, lead.span
    for note in rig.field_notes:
        yield f"field-note {note.number}", f"field note {note.number} is of", note.date, note.span
    for accept in rig.accepts:
        yield accept.target or accept.rule, f"{accept.rule} is accepted until", accept.until, accept.span
    if rig.head.frozen is not None:
        yield rig.head.name, "this revision was frozen on", rig.head.frozen.date, rig.head.frozen.span


CHECK = far_date
