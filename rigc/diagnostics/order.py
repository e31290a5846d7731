"""Findings as they were found -> the order in which they are told, each once."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Level


def in_order(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Sorted by level (accepted ones last), then file, place, code and message; exact doubles removed."""
    return tuple({_key(finding): finding for finding in sorted(findings, key=_key)}.values())


def count(findings: Iterable[Diagnostic]) -> dict[Level | None, int]:
    """How many findings there are of each level; under None, how many are accepted."""
    counts: dict[Level | None, int] = dict.fromkeys((*Level, None), 0)
    for finding in findings:
        counts[None if finding.accepted else finding.level] += 1
    return counts


def _key(finding: Diagnostic) -> tuple[bool, int, str, int, int, str, str]:
    span = finding.span
    file, start, end = (span.source.name, span.start, span.end) if span else ("", -1, -1)
    return finding.accepted is not None, finding.level, file, start, end, finding.kind.name, finding.message
