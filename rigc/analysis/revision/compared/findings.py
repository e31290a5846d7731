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
    or that were accepted or are no longer; `regrouped` are pairs that are about more, fewer or other things than before."""

    came: tuple[Diagnostic, ...] = ()
    went: tuple[Diagnostic, ...] = ()
    changed: tuple[tuple[Diagnostic, Diagnostic], ...] = ()
    regrouped: tuple[tuple[Diagnostic, Diagnostic], ...] = ()


def all_findings(results: Results) -> tuple[Diagnostic, ...]:
    """What every check finds, judged on the day of the revision."""
    rig = results.rig
    found = [each for check in all_checks() for each in results.call(check)]
    return in_order(accepted(tuple(found), rig.accepts, rig.head.date))


def finding_changes(old: tuple[Diagnostic, ...], new: tuple[Diagnostic, ...]) -> FindingChanges:
    """A finding is the same one if its rule and what it is about are; of several of those the order decides. Of the others of one rule
    those go together that are about the most of the same things: what it lists may have grown or shrunk."""
    before, now = _numbered(old), _numbered(new)
    same = [(before[key], each) for key, each in now.items() if key in before]
    came = [each for key, each in now.items() if key not in before]
    went = [each for key, each in before.items() if key not in now]
    alike = _alike(went, came)
    return FindingChanges(
        tuple(each for each in came if each not in [now for _, now in alike]),
        tuple(each for each in went if each not in [was for was, _ in alike]),
        tuple((one, other) for one, other in same if _said(one) != _said(other)),
        tuple((one, other) for one, other in alike if _said(one) != _said(other)),
    )


def _alike(went: list[Diagnostic], came: list[Diagnostic]) -> list[tuple[Diagnostic, Diagnostic]]:
    """Pairs of one rule that share half of what either is about, or what it is about first; the likest first."""
    pairs = [
        (-share, at, to)
        for at, one in enumerate(went)
        for to, other in enumerate(came)
        if one.kind.name == other.kind.name and (share := _shared(one, other)) > 0
    ]
    taken: list[tuple[int, int]] = []
    for _, at, to in sorted(pairs):
        if all(at != each and to != other for each, other in taken):
            taken.append((at, to))
    return [(went[at], came[to]) for at, to in taken]


def _shared(one: Diagnostic, other: Diagnostic) -> float:
    here, there = {*one.subject}, {*other.subject}
    share = len(here & there) / max(1, len(here | there))
    return share if share >= 0.5 or (share and one.subject[0] == other.subject[0]) else 0.0


def _numbered(findings: tuple[Diagnostic, ...]) -> dict[tuple[str, int], Diagnostic]:
    found: dict[tuple[str, int], Diagnostic] = {}
    for each in findings:
        key = each.fingerprint
        found[key, sum(1 for known, _ in found if known == key)] = each
    return found


def _said(finding: Diagnostic) -> tuple[object, ...]:
    return finding.message, finding.level, finding.accepted is not None
