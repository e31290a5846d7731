"""Findings under a selection -> their mends, each tried: the texts that it makes, by file."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.editor.trials import Trials
from rigc.record import Record
from rigc.source import Source


class Action(Record):
    """One mend that was tried and works: its words, the finding that it puts right, the new texts by the names of their sources."""

    title: str
    finding: Diagnostic
    texts: dict[str, str]
    best: bool


def actions(findings: Iterable[Diagnostic], source: Source, start: int, end: int, trials: Trials) -> tuple[Action, ...]:
    """The mends of the findings of a source that touch a stretch of it, in the order of the findings."""
    found: list[Action] = []
    for finding in findings:
        span = finding.span
        if span is None or span.source is not source or not (span.start <= end and start <= span.end):
            continue
        for mend in finding.mends if finding.accepted is None else ():
            tried = trials.tried(finding, mend)
            if tried is not None and tried.works:
                best = not any(each.finding is finding for each in found)
                found.append(Action(mend.words, finding, tried.texts, best))
    return tuple(found)
