"""Findings -> JSON lines, one object each, for editors and for checks that run by themselves; a place as plain values."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Span


def jsonl(findings: Iterable[Diagnostic], shown: Callable[[str], str] = str) -> str:
    """One line of JSON for each finding, ASCII only; `shown` turns a source's name into the path to print."""
    return "".join(f"{json.dumps(record(finding, shown))}\n" for finding in findings)


def record(finding: Diagnostic, shown: Callable[[str], str] = str) -> dict[str, Any]:
    """A finding as plain values. Lines and columns count from 1, columns in characters; the end is the first one after.

    A finding without a place has null for file, line and column.
    """
    kind, accepted = finding.kind, finding.accepted
    return {
        "rule": kind.name,
        "level": finding.level.word,
        "message": finding.message,
        **_place(finding.span, shown),
        "label": finding.label,
        "related": [{"message": label.text, **_place(label.span, shown)} for label in finding.also],
        "numbers": [{"name": each.name, "value": each.value, "unit": each.unit} for each in finding.numbers],
        "note": finding.note,
        "help": finding.advice,
        "mends": [mend.words for mend in finding.mends],
        "follow": [{"rule": each.kind.name, "message": each.message} for each in finding.follow],
        "condition": kind.rule,
        "source": kind.source,
        "fingerprint": finding.fingerprint,
        "accepted": {"reason": accepted.reason, "by": accepted.by, "until": accepted.until} if accepted else None,
    }


def _place(span: Span | None, shown: Callable[[str], str]) -> dict[str, str | int | None]:
    if span is None:
        return dict.fromkeys(("file", "line", "column", "end_line", "end_column"))
    line, column, end_line, end_column = span.reach
    return {
        "file": shown(span.source.name),
        "line": line,
        "column": column,
        "end_line": end_line,
        "end_column": end_column,
    }


def place_of(span: Span | None, shown: Callable[[str], str]) -> dict[str, Any] | None:
    """Where a span begins, as plain values, line and column from 1; None where there is none."""
    return None if span is None else {"file": shown(span.source.name), "line": span.line, "column": span.column}
