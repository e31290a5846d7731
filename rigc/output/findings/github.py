"""Findings -> workflow commands, which a GitHub runner reads off the output of a step and shows on the changed lines."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.loader import STOCK

_COMMANDS = {Level.ERROR: "error", Level.WARNING: "warning", Level.REMARK: "notice", Level.CANT_CHECK: "notice"}
_IN_TEXT = {"%": "%25", "\r": "%0D", "\n": "%0A"}
_IN_PROPERTY = {**_IN_TEXT, ":": "%3A", ",": "%2C"}


def render(findings: Iterable[Diagnostic], shown: Callable[[str], str] = str) -> str:
    """One line for each finding that was not accepted; one in a file that ships with rigc stands without a place."""
    return "".join(_line(finding, shown) for finding in findings if finding.accepted is None)


def _line(finding: Diagnostic, shown: Callable[[str], str]) -> str:
    cant_check = finding.level is Level.CANT_CHECK
    place = {**_place(finding, shown), "title": f"{'cannot check ' if cant_check else ''}{finding.kind.name}"}
    given = ",".join(f"{name}={_escaped(value, _IN_PROPERTY)}" for name, value in place.items())
    told = "\n".join(filter(None, (finding.message, finding.note, finding.advice and f"do: {finding.advice}")))
    return f"::{_COMMANDS[finding.level]} {given}::{_escaped(told, _IN_TEXT)}\n"


def _place(finding: Diagnostic, shown: Callable[[str], str]) -> dict[str, str]:
    """File and lines; columns only within one line, for a runner refuses them otherwise."""
    span = finding.span
    if span is None or (span.source.name.startswith(STOCK) and shown(span.source.name) == span.source.name):
        return {}
    (line, column), (end_line, end_column) = map(span.source.position, (span.start, max(span.start, span.end)))
    place = {"file": shown(span.source.name), "line": str(line), "endLine": str(end_line)}
    return {**place, "col": str(column), "endColumn": str(end_column)} if line == end_line else place


def _escaped(text: str, escapes: dict[str, str]) -> str:
    return "".join(escapes.get(sign, sign) for sign in text)
