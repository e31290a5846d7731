"""A sheet as HTML that goes into a page; its numbers tell the names of their figures."""

from __future__ import annotations

from typing import Any

from rigc.compile import Compiled
from rigc.files.kept import kept
from rigc.output import html
from rigc.output.layout import Layout
from rigc.reports.folder import FRONT_PAGE, sheet_names


def sheet(made: Compiled, name: str) -> dict[str, Any] | None:
    """None where there is no such sheet, or nothing is drawn. One that has nothing to say about the rig says why."""
    if name not in sheet_names():
        return None
    draft = made.has_errors
    found = next(iter(made.documents((name,), draft)), None) if name == FRONT_PAGE else made.loose(name, draft)
    if found is None:
        return None
    title = found.title
    return {
        "name": name,
        "head": f"{title.rig}, revision {title.revision}",
        "html": html.render(found, Layout("a4", None, kept(), live=True)),
    }
