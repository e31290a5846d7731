"""Results -> the documents of the rig's folder: each sheet with its title block and its number."""

from __future__ import annotations

import sys
from typing import Any

from rigc.analysis.results import Results
from rigc.discover import members
from rigc.reports.content import Document, NoSheet, Paragraph, Sheet, TitleBlock


def sheet_names() -> tuple[tuple[str, str], ...]:
    """Name and one line of every sheet, in the order of the folder; no sheet is made for it."""
    return tuple((_name(made), _line(made)) for made in members("rigc.reports.sheets", "SHEET"))


def view_names() -> tuple[tuple[str, str], ...]:
    """Name and one line of what can be shown beside the sheets."""
    return tuple((_name(made), _line(made)) for made in members("rigc.reports.views", "VIEW"))


def documents(results: Results, title: TitleBlock, names: tuple[str, ...]) -> tuple[Document, ...]:
    """The sheets of these names, all if empty; a view only if it is named. A sheet keeps its number in the whole folder.

    A sheet that has nothing to say about this rig is left out; where it is named, it says why.
    """
    makers = members("rigc.reports.sheets", "SHEET")
    found = []
    for number, made in enumerate(makers, 1):
        if not names or _name(made) in names:
            sheet = results.call(made)
            if isinstance(sheet, NoSheet):
                if not names:
                    continue
                sheet = Sheet(sheet.name, sheet.title, "", (Paragraph("reason", (sheet.reason,)),))
            found.append(Document(sheet, title.replace(sheet=sheet.title), number, len(makers)))
    if set(names) - {_name(made) for made in makers}:
        views = [results.call(made) for made in members("rigc.reports.views", "VIEW") if _name(made) in names]
        found += [Document(view, title.replace(sheet=view.title), 0, 0) for view in views]
    return tuple(found)


def _name(made: Any) -> str:
    name: str = made.__name__
    return name.replace("_", "-")


def _line(made: Any) -> str:
    return (sys.modules[made.__module__].__doc__ or "").split("\n")[0].rstrip(".")
