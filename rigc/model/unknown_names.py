"""Findings -> the same, a name that nothing declares told once: at the first place where it stands, with the other places."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.model.scope import UNKNOWN


def each_name_once(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """One cause, one finding: a slip in a declaration shows at every line that bears the right name."""
    kept: list[Diagnostic] = []
    where: dict[tuple[str, ...], int] = {}
    for finding in findings:
        if finding.kind is not UNKNOWN or not finding.subject or finding.span is None:
            kept.append(finding)
        elif finding.subject in where:
            at = where[finding.subject]
            kept[at] = kept[at].replace(also=(*kept[at].also, Label(finding.span, "and here")))
        else:
            where[finding.subject] = len(kept)
            kept.append(finding)
    return tuple(kept)
