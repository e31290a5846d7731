"""StrangeYear: the revision's day and all others that the file holds -> whether that one day is far from all of them, as its year is then wrong."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.findings.dated_facts import DatedFacts
from rigc.analysis.findings.months import months_before
from rigc.facts.guesses import FAR_MONTHS, OLD_MONTHS
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span

_FEW = 2
"""One day alone may itself be the wrong one."""


class Dated(Record):
    """What is done with the board on a day: what it is about, its words, its day and its place; `ahead` is what lies in the future when it is
    written."""

    subject: str
    words: str
    date: str
    span: Span
    ahead: bool = False


class StrangeYear(Record):
    """What is done with the board; and of all days on which something was done or measured the `nearest` to the revision's, where each of them
    is far from it, on one side (empty: it is near to one of them). `meant` is the day with another year that stands near them, if one slip
    of the hand leads to it."""

    done: tuple[Dated, ...]
    nearest: str
    meant: str


def strange_year(rig: Rig, dated: DatedFacts) -> StrangeYear:
    """Looks at everything with a day once."""
    done, day = tuple(_done(rig)), rig.head.date
    days = [each.date for each in done if not each.ahead]
    days += [
        fact.provenance.date
        for each in dated.all
        for fact in each.facts
        if fact.provenance is not None and fact.provenance.date
    ]
    if not day or len(days) < _FEW:
        return StrangeYear(done, "", "")
    far = round(FAR_MONTHS.value)
    if max(days) < months_before(day, far):
        return StrangeYear(done, max(days), _meant(day, max(days)))
    if months_before(min(days), far) > day:
        return StrangeYear(done, min(days), _meant(day, max(days)))
    return StrangeYear(done, "", "")


def _meant(day: str, latest: str) -> str:
    """The one day, with a digit of its year other or two exchanged, on which the latest of the others is neither to come nor old."""
    year, rest = day[:4], day[4:]
    years = {f"{year[:at]}{digit}{year[at + 1 :]}" for at in range(4) for digit in "0123456789"}
    years |= {f"{year[:at]}{year[at + 1]}{year[at]}{year[at + 2 :]}" for at in range(3)}
    near = [f"{each}{rest}" for each in sorted(years)]
    near = [each for each in near if months_before(each, round(OLD_MONTHS.value)) <= latest <= each]
    return near[0] if len(near) == 1 else ""


def _done(rig: Rig) -> Iterator[Dated]:
    for reading in rig.readings:
        words = f"test {reading.test} at {reading.point} was read on"
        yield Dated(reading.point, words, reading.date, reading.span)
    for block in rig.as_built:
        for lead in block.leads:
            if lead.date:
                yield Dated(lead.mark, f"{lead.mark} was measured on", lead.date, lead.span)
    for note in rig.field_notes:
        yield Dated(f"field-note {note.number}", f"field note {note.number} is of", note.date, note.span)
    for accept in rig.accepts:
        yield Dated(accept.target or accept.rule, f"{accept.rule} is accepted until", accept.until, accept.span, True)
    if rig.head.frozen is not None:
        frozen = rig.head.frozen
        yield Dated(rig.head.name, "this revision was frozen on", frozen.date, frozen.span)


COMPUTE = strange_year
