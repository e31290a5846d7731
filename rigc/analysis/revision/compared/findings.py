"""Two revisions -> the findings that came, those that went, and those that say something else now."""

from __future__ import annotations

from rigc.analysis.acceptance import accepted
from rigc.analysis.every_check import all_checks
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.order import in_order
from rigc.record import Record


class FindingChanges(Record):
    """`came` and `went` are of this revision and of the one before; `changed` are pairs (before, now) that tell other figures,
    or that were accepted or are no longer."""

    came: tuple[Diagnostic, ...] = ()
    went: tuple[Diagnostic, ...] = ()
    changed: tuple[tuple[Diagnostic, Diagnostic], ...] = ()


def all_findings(results: Results) -> tuple[Diagnostic, ...]:
    """What every check finds, judged on the day of the revision."""
    rig = results.rig
    found = [each for check in all_checks() for each in results.call(check)]
    return in_order(accepted(tuple(found), rig.accepts, rig.head.date))


def finding_changes(old: tuple[Diagnostic, ...], new: tuple[Diagnostic, ...]) -> FindingChanges:
    """A finding is the same one if its rule and what it is about are; of several of those the order decides."""
    before = _numbered(old)
    now = _numbered(new)
    same = [(before[key], each) for key, each in now.items() if key in before]
    return FindingChanges(
        tuple(each for key, each in now.items() if key not in before),
        tuple(each for key, each in before.items() if key not in now),
        tuple((one, other) for one, other in same if _said(one) != _said(other)),
    )


def _numbered(findings: tuple[Diagnostic, ...]) -> dict[tuple[str, int], Diagnostic]:
    found: dict[tuple[str, int], Diagnostic] = {}
    for each in findings:
        key = each.fingerprint
        found[key, sum(1 for known, _ in found if known == key)] = each
    return found


def _said(finding: Diagnostic) -> tuple[object, ...]:
    return finding.message, finding.level, finding.accepted is not None
