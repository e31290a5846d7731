"""Findings under a selection -> their mends, each tried: the texts that it makes, by file."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend
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
        if finding.mends and finding.accepted is None:
            found += trials.bench.ways(finding, partial(_of, finding, trials))
    return tuple(found)


def _of(finding: Diagnostic, trials: Trials, mends: tuple[Mend, ...]) -> list[Action]:
    tried = [(mend.words, trials.tried(finding, mend)) for mend in mends]
    working = [(words, each) for words, each in tried if each is not None and each.works]
    return [Action(words, finding, each.texts, best=place == 0) for place, (words, each) in enumerate(working)]
