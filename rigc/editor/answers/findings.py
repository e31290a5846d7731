"""Findings -> those of each file, now; what was computed before the last edit is moved to where its lines stand."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span, alike


def by_file(findings: Iterable[Diagnostic], first: Source) -> dict[Source, list[Diagnostic]]:
    """The findings by the source in which they are; one without a place, and what was accepted, by the rig's own file and not at all."""
    found: dict[Source, list[Diagnostic]] = {}
    for each in findings:
        if each.accepted is None:
            found.setdefault(first if each.span is None else each.span.source, []).append(each)
    return found


def carried(span: Span, now: Source) -> Span | None:
    """A span of an earlier text of a file, in its text of now; None where that part was edited."""
    old, text = span.source.text, now.text
    if old == text:
        return Span(now, span.start, span.end)
    same, end = alike(old, text)
    if span.end <= same:
        return Span(now, span.start, span.end)
    if span.start >= len(old) - end:
        moved = len(text) - len(old)
        return Span(now, span.start + moved, span.end + moved)
    return None


def carried_findings(findings: Iterable[Diagnostic], now: dict[tuple[str, str], Source]) -> list[Diagnostic]:
    """Computed findings of before, where their lines stand now; those on lines that were edited are left out. Mends are not told: they were
    of another text."""
    found: list[Diagnostic] = []
    for each in findings:
        source = None if each.span is None else now.get((each.span.source.name, each.span.source.origin))
        span = None if each.span is None or source is None else carried(each.span, source)
        if each.span is None or span is not None:
            found.append(each.replace(span=span, also=(), mends=()))
    return found
