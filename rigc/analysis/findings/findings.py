"""Every check, asked once -> what all of them find."""

from __future__ import annotations

from rigc.analysis.every_check import all_checks
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.record import Record


class Findings(Record):
    """The findings, check by check, before any of them is accepted or put in order."""

    all: tuple[Diagnostic, ...]


def findings(results: Results) -> Findings:
    """Asks every check."""
    return Findings(tuple(each for check in all_checks() for each in results.call(check)))


COMPUTE = findings
