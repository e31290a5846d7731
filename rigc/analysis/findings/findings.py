"""Every check, asked once -> what all of them find."""

from __future__ import annotations

from rigc.analysis.every_check import all_checks
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.loader import STOCK
from rigc.record import Record
from rigc.source import Span


class Findings(Record):
    """The findings, check by check, before any of them is accepted or put in order."""

    all: tuple[Diagnostic, ...]


def findings(results: Results) -> Findings:
    """Asks every check."""
    return Findings(tuple(_at_home(each) for check in all_checks() for each in results.found(check)))


def _at_home(finding: Diagnostic) -> Diagnostic:
    """A finding at a line of the stock that ships, which nobody edits, is told at the first line of the user's that it shows."""
    own = next((label for label in finding.also if not _ships(label.span)), None)
    if finding.span is None or not _ships(finding.span) or own is None:
        return finding
    rest = (Label(finding.span, finding.label), *(label for label in finding.also if label is not own))
    made: Diagnostic = finding.replace(span=own.span, label=own.text, also=rest)
    return made


def _ships(span: Span) -> bool:
    return span.source.name.startswith(STOCK)


COMPUTE = findings
