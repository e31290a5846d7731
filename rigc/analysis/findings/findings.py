"""Every check, asked once -> what all of them find."""

from __future__ import annotations

from itertools import chain

from rigc.analysis.every_check import check, homes
from rigc.analysis.findings.known_findings import KnownFindings
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.loader import STOCK
from rigc.record import Record
from rigc.source import Span


class Findings(Record):
    """The findings, check by check, before any of them is accepted or put in order."""

    all: tuple[Diagnostic, ...]


def findings(results: Results, known: KnownFindings) -> Findings:
    """Asks every check whose findings are not known."""
    found = {name: known.found[name] if name in known.found else results.found(check(name)) for name in homes()}
    known.all(found, lambda name: results.read_by(check(name)))
    return Findings(tuple(map(_at_home, chain.from_iterable(found.values()))))


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
