"""Results -> the documents of the rig's folder: each sheet with its title block and its number."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import Any

from rigc.analysis.results import Results
from rigc.discover import member, members, nested
from rigc.reports.content import Document, NoSheet, Paragraph, Sheet, TitleBlock
from rigc.reports.made import made

SHEETS, VIEWS = "rigc.reports.sheets", "rigc.reports.views"


def sheet_modules() -> list[str]:
    """The module of every sheet, in the order of the folder; none of them is imported."""
    return sorted(nested(SHEETS), key=_name)


def all_sheets() -> tuple[Callable[..., Any], ...]:
    """What makes each sheet, in the order of the folder."""
    return tuple(member(module, "SHEET") for module in sheet_modules())


def sheet_names() -> tuple[str, ...]:
    """The name of every sheet, in the order of the folder; none of them is loaded for it."""
    return tuple(_name(module) for module in sheet_modules())


def sheet_lines() -> tuple[tuple[str, str], ...]:
    """Name and one line of every sheet, in the order of the folder; no sheet is made for it."""
    return tuple((_name(made.__module__), _line(made.__module__)) for made in all_sheets())


def view_lines() -> tuple[tuple[str, str], ...]:
    """Name and one line of what can be shown beside the sheets."""
    return tuple((_name(made.__module__), _line(made.__module__)) for made in members(VIEWS, "VIEW"))


def documents(results: Results, title: TitleBlock, names: tuple[str, ...]) -> tuple[Document, ...]:
    """The sheets of these names, all if empty; a view only if it is named. A sheet keeps its number in the whole folder.

    A sheet that has nothing to say about this rig is left out; where it is named, it says why.
    """
    modules = sheet_modules()
    found = []
    for number, module in enumerate(modules, 1):
        if not names or _name(module) in names:
            sheet = made(results, member(module, "SHEET"))
            if isinstance(sheet, NoSheet):
                if not names:
                    continue
                sheet = Sheet(sheet.name, sheet.title, "", (Paragraph("reason", (sheet.reason,)),))
            found.append(Document(sheet, title.replace(sheet=sheet.title), number, len(modules)))
    if set(names) - set(sheet_names()):
        views = [results.call(made) for made in members(VIEWS, "VIEW") if _name(made.__module__) in names]
        found += [Document(view, title.replace(sheet=view.title), 0, 0) for view in views]
    return tuple(found)


def _name(module: str) -> str:
    return module.rpartition(".")[2].replace("_", "-")


def _line(module: str) -> str:
    return (sys.modules[module].__doc__ or "").split("\n")[0].rstrip(".")
