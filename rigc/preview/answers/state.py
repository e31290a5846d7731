"""What a page shows around its sheets: the rig's head, what is found, what there is to open and to pick."""

from __future__ import annotations

from typing import Any

from rigc.analysis.leads.leads import Leads
from rigc.compile import Compiled
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.machine import record
from rigc.diagnostics.terminal import summary
from rigc.loader import Unreadable
from rigc.preview.preview import Preview
from rigc.reports.folder import room, sheet_lines, sheet_modules, sheet_name


def state(preview: Preview) -> dict[str, Any]:
    """`drawn` is the number of the look that is drawn; `hash` what a move must give back."""
    look, good = preview.now, preview.good
    told = () if look is None else tuple(each for each in look.findings if each.accepted is None)
    fault = preview.fault
    findings = [finding(each) for each in told] if fault is None else [_unreadable(fault)]
    return {
        "number": preview.number,
        "drawn": 0 if good is None else good.number,
        "hash": "" if good is None else good.hash,
        "broken": preview.broken,
        "file": preview.rig.name,
        "summary": summary(told) if fault is None else "the file can't be read",
        "findings": findings,
        "sheets": _sheets(),
        "beside": [{"key": key, "words": words} for key, words in preview.choices().items()],
        "undo": preview.history.done[-1].words if preview.history.done else "",
        "redo": preview.history.undone[-1].words if preview.history.undone else "",
        **(_nothing() if good is None else _rig(good.made)),
    }


def finding(each: Diagnostic) -> dict[str, Any]:
    """A finding as programs read it, and the names that it is about."""
    return record(each) | {"about": list(dict.fromkeys(name.partition(".")[0] for name in each.subject))}


def _unreadable(fault: Unreadable) -> dict[str, Any]:
    return {
        "rule": "",
        "level": "error",
        "message": fault.message,
        "help": fault.help,
        "note": "",
        "file": fault.name,
        "line": fault.line or None,
        "about": [],
    }


def _rig(made: Compiled) -> dict[str, Any]:
    results = made.results
    assert results is not None
    head = results.rig.head
    things = [
        {"name": each.name, "sort": str(getattr(each, "kind", "")) or "thing", "title": each.title}
        for each in results.rig.things.values()
    ]
    leads = [
        {"name": each.mark, "sort": "lead", "title": f"{each.start} to {each.end}"} for each in results.get(Leads).all
    ]
    return {
        "title": head.title,
        "revision": head.letter,
        "date": head.date,
        "names": [*things, *({each["name"]: each for each in leads}.values())],
    }


def _nothing() -> dict[str, Any]:
    return {"title": "", "revision": "", "date": "", "names": []}


def _sheets() -> list[dict[str, str]]:
    rooms = {sheet_name(module): room(module) for module in sheet_modules()}
    return [
        {"name": name, "words": line.partition(":")[0], "room": rooms.get(name, "")} for name, line in sheet_lines()
    ]
