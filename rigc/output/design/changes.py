"""Changes -> JSON of a stable shape: both revisions, the work with what asks for it, the things, the findings."""

from __future__ import annotations

import json
from typing import Any

from rigc.analysis.revision.compared.aspect import WORK
from rigc.analysis.revision.compared.changed import ChangedThing, Difference
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.records import Change
from rigc.reports.revision.changes.changes import Changes, Side

FORMAT = 1  # counts up when a reader of the old shape would go wrong


def render(changes: Changes) -> str:
    """UTF-8, indented. Exact values stand beside the texts: numbers in the unit of their text or as they are computed
    (lengths of leads in tenths of a millimetre), lists for what has parts."""
    found = changes.findings
    told = {
        "format": FORMAT,
        "old": _side(changes.old),
        "new": _side(changes.new),
        "work": {work: list(changes.of_work(work)) for work in WORK},
        "things": [_thing(each) for each in changes.things],
        "stated": [_stated(each) for each in changes.stated],
        "findings": {
            "came": [_finding(each) for each in found.came],
            "went": [_finding(each) for each in found.went],
            "changed": [
                {"before": _finding(before), "now": _finding(now)} for before, now in (*found.regrouped, *found.changed)
            ],
        },
        "held_back": changes.held,
        "cut": changes.cut,
    }
    return json.dumps(told, ensure_ascii=False, indent=2, default=str) + "\n"


def _side(side: Side) -> dict[str, str]:
    return {
        "file": side.file,
        "rig": side.rig,
        "title": side.title,
        "revision": side.letter,
        "date": side.date,
        "text": side.text,
    }


def _thing(thing: ChangedThing) -> dict[str, Any]:
    return {
        "kind": thing.kind,
        "name": thing.name,
        "was": thing.was or None,
        "how": thing.how,
        "guess": thing.why or None,
        "work": list(thing.work),
        "causes": list(thing.causes),
        "stated": list(thing.stated),
        "fields": [_field(each) for each in thing.differences],
    }


def _field(each: Difference) -> dict[str, Any]:
    return {
        "field": each.field,
        "before": each.before,
        "now": each.now,
        "exact_before": each.exact_before,
        "exact_now": each.exact_now,
        "work": list(each.work),
        "causes": list(each.causes),
        "origin": each.origin,
        "held_back": each.held or None,
        "detail": each.detail,
        "source": None if each.span is None else str(each.span),
    }


def _stated(change: Change) -> dict[str, Any]:
    return {
        "number": change.number,
        "cause": change.cause,
        "text": change.text,
        "because": change.because or None,
        "touches": list(change.touches),
    }


def _finding(finding: Diagnostic) -> dict[str, Any]:
    return {
        "rule": finding.kind.name,
        "level": finding.level.word,
        "message": finding.message,
        "about": list(finding.subject),
        "accepted": None if finding.accepted is None else finding.accepted.reason,
        "fingerprint": finding.fingerprint,
    }
