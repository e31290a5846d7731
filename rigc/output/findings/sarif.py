"""Findings -> SARIF 2.1.0, the open form in which forges and editors take what a checker found.

A can't-check is a result of kind `open`: the standard's word for a rule that could not be judged for want of a fact. A finding that
was accepted is suppressed in the source, with who signed for it. Mends are fixes.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Sequence
from itertools import groupby
from typing import Any
from urllib.parse import quote

from rigc import __version__
from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Level
from rigc.diagnostics.mend import Mend
from rigc.edit.change import Change
from rigc.loader import STOCK
from rigc.record import Record
from rigc.source import Source, Span

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
FINGERPRINT = "rigc/v1"
_LEVELS = {Level.ERROR: "error", Level.WARNING: "warning", Level.REMARK: "note", Level.CANT_CHECK: "none"}
_BASES = {
    "%SRCROOT%": {"description": {"text": "the folder in which rigc ran"}},
    "RIGC": {"description": {"text": "the stock that ships with rigc"}},
}

Changes = Callable[[Mend], dict[Source, list[Change]]]
"""A mend -> its changes by source; none where it can't be written."""


class Found(Record):
    """What was found in one rig; `shown` turns the names of its sources into paths."""

    findings: tuple[Diagnostic, ...]
    shown: Callable[[str], str]
    changes: Changes


def render(found: Sequence[Found], unread: Sequence[str], code: int, page: Callable[[Kind], str]) -> str:
    """All that one run of rigc found, as one document, ASCII only.

    `unread` tells of each file that could not be read, `code` is the exit code, `page` gives the page of a rule.
    """
    kinds = {finding.kind.name: finding.kind for each in found for finding in each.findings}
    names = sorted(kinds)
    run = {
        "tool": {
            "driver": {
                "name": "rigc",
                "version": __version__,
                "semanticVersion": __version__,
                "rules": [_rule(kinds[name], page) for name in names],
            }
        },
        "invocations": [
            {
                "executionSuccessful": not unread,
                "exitCode": code,
                "toolExecutionNotifications": [{"level": "error", "message": {"text": each}} for each in unread],
            }
        ],
        "originalUriBaseIds": _BASES,
        "columnKind": "unicodeCodePoints",
        "results": [_result(finding, names, each) for each in found for finding in each.findings],
    }
    return json.dumps({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, indent=1) + "\n"


def _rule(kind: Kind, page: Callable[[Kind], str]) -> dict[str, Any]:
    level = _LEVELS[kind.level]
    return {
        "id": kind.name,
        "shortDescription": {"text": kind.rule or kind.name},
        "help": {"text": page(kind)},
        "defaultConfiguration": {"level": level},
        "properties": {"source": kind.source},
    }


def _result(finding: Diagnostic, names: Sequence[str], rig: Found) -> dict[str, Any]:
    told = [finding.message, finding.note, finding.advice and f"do: {finding.advice}"]
    result: dict[str, Any] = {
        "ruleId": finding.kind.name,
        "ruleIndex": names.index(finding.kind.name),
        "kind": "open" if finding.level is Level.CANT_CHECK else "fail",
        "level": _LEVELS[finding.level],
        "message": {"text": "\n".join(filter(None, told))},
        "partialFingerprints": {FINGERPRINT: finding.fingerprint},
    }
    if finding.span:
        result["locations"] = [_location(finding.span, rig.shown, finding.label)]
    if finding.also:
        result["relatedLocations"] = [_location(each.span, rig.shown, each.text) for each in finding.also]
    if finding.numbers:
        result["properties"] = {
            "numbers": [{"name": each.name, "value": each.value, "unit": each.unit} for each in finding.numbers]
        }
    if finding.accepted:
        result["suppressions"] = [_suppression(finding.accepted, rig.shown)]
    fixes = list(_fixes(finding.mends, rig))
    if fixes:
        result["fixes"] = fixes
    return result


def _suppression(accepted: Acceptance, shown: Callable[[str], str]) -> dict[str, Any]:
    return {
        "kind": "inSource",
        "status": "accepted",
        "justification": f"{accepted.reason} (accepted by {accepted.by} until {accepted.until})",
        "location": _location(accepted.span, shown),
    }


def _fixes(mends: Iterable[Mend], rig: Found) -> Iterable[dict[str, Any]]:
    for mend in mends:
        changes = rig.changes(mend)
        if changes:
            yield {
                "description": {"text": mend.words},
                "artifactChanges": [
                    {
                        "artifactLocation": _artifact(source, rig.shown),
                        "replacements": list(_replacements(source, each)),
                    }
                    for source, each in changes.items()
                ],
            }


def _replacements(source: Source, changes: Iterable[Change]) -> Iterable[dict[str, Any]]:
    """What stands at one place is one replacement: in which order a reader would make two is not said."""
    for (start, end), same in groupby(changes, key=lambda each: (each.start, each.end)):
        text = "".join(each.text for each in same)
        text = text.replace("\n", "\r\n") if b"\r\n" in source.data else text
        yield {
            "deletedRegion": _region(Span(source, start, end)),
            **({"insertedContent": {"text": text}} if text else {}),
        }


def _location(span: Span, shown: Callable[[str], str], words: str = "") -> dict[str, Any]:
    place = {"artifactLocation": _artifact(span.source, shown), "region": _region(span)}
    return {"physicalLocation": place, **({"message": {"text": words}} if words else {})}


def _artifact(source: Source, shown: Callable[[str], str]) -> dict[str, Any]:
    """Where a file lies: below the folder in which rigc ran, elsewhere on the disk, or in what ships with rigc."""
    path = shown(source.name)
    if source.name.startswith(STOCK) and path == source.name:
        return {"uri": quote(path), "uriBaseId": "RIGC"}
    if path.startswith("/"):
        return {"uri": f"file://{quote(path)}"}
    return {"uri": quote(path), "uriBaseId": "%SRCROOT%"}


def _region(span: Span) -> dict[str, int]:
    """Lines and columns count from 1, columns in code points; the end is the first column after."""
    line, column, end_line, end_column = span.reach
    return {"startLine": line, "startColumn": column, "endLine": end_line, "endColumn": end_column}
