"""Results -> the documents of the rig's folder: the front page, and each sheet with its title block, its code and its number."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable
from functools import partial
from typing import Any

from rigc.analysis.findings.known_findings import KnownFindings
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.results import Results, needed
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.discover import member, members, nested
from rigc.reports.content import Document, NoSheet, Paragraph, Sheet, TitleBlock
from rigc.reports.front.made import made
from rigc.reports.front.sheet_codes import FRONT, LETTERS, codes, is_code, written_out

SHEETS, VIEWS = "rigc.reports.sheets", "rigc.reports.views"
FRONT_PAGE = "front-page"


class NoSuchCode(LookupError):
    """No sheet of this rig has the code; the text is one line that names those that there are."""


def sheet_modules(kept: Kept = NOTHING_KEPT) -> list[str]:
    """The module of every sheet, in the order of the folder: room by room, in each by the place that the sheet states. None is imported
    where the order is kept."""
    return kept.answer("sheets", "order", lambda: sorted(nested(SHEETS), key=_order), list)


def all_sheets() -> tuple[Callable[..., Any], ...]:
    """What makes each sheet, in the order of the folder."""
    return tuple(member(module, "SHEET") for module in sheet_modules())


def sheet_names(kept: Kept = NOTHING_KEPT) -> tuple[str, ...]:
    """The name of every sheet, in the order of the folder, the front page first."""
    return (FRONT_PAGE, *(sheet_name(module) for module in sheet_modules(kept)))


def sheet_lines() -> tuple[tuple[str, str], ...]:
    """Name and one line of every sheet, in the order of the folder; no sheet is made for it."""
    from rigc.reports.front import front_page

    front = (FRONT_PAGE, _line(front_page.__name__))
    return (front, *((sheet_name(module), _line(module)) for module in sheet_modules()))


def view_lines() -> tuple[tuple[str, str], ...]:
    """Name and one line of what can be shown beside the sheets."""
    return tuple((sheet_name(made.__module__), _line(made.__module__)) for made in members(VIEWS, "VIEW"))


def documents(
    results: Results, title: TitleBlock, names: tuple[str, ...] = (), findings: Iterable[Diagnostic] = ()
) -> tuple[Document, ...]:
    """The sheets of these names or codes, all if empty; a view only if it is named. A sheet keeps its code in the whole folder.

    A sheet that has nothing to say about this rig is left out; where it is named, it says why. `findings` stand on the front page.
    Raises `NoSuchCode`.
    """
    from rigc.reports.front.front_page import front_page

    kept = results.get(Kept)
    modules = sheet_modules(kept)
    known = {FRONT_PAGE, *map(sheet_name, modules)}
    views = [results.call(view) for view in members(VIEWS, "VIEW") if sheet_name(view.__module__) in names]
    found = [Document(view, title.replace(sheet=view.title), 0, 0) for view in views]
    if names and not any(name in known or is_code(name) for name in names):
        return tuple(found)
    there = _there(results, modules, kept)
    code = codes((room(module), sheet_name(module)) for module in there)
    count = len(there) + 1
    whole = not names or bool({FRONT_PAGE, FRONT} & set(names))
    told = [
        Document(written_out(saying(sheet), code), title.replace(sheet=sheet.title), number, count, code[sheet.name])
        for number, module in enumerate(there, 2)
        if whole or {sheet_name(module), code[sheet_name(module)]} & set(names)
        if isinstance(sheet := made(results, member(module, "SHEET")), Sheet)
    ]
    left_out = [
        sheet
        for module in modules
        if module not in there
        and (whole or sheet_name(module) in names)
        and isinstance(sheet := made(results, member(module, "SHEET")), NoSheet)
    ]
    if whole:
        front = front_page(results, tuple(findings), tuple(told), tuple(left_out))
        told.insert(0, Document(front, title.replace(sheet=front.title), 1, count, FRONT))
    if not names:
        return tuple(told)
    wrong = [name for name in names if is_code(name) and name not in (FRONT, *code.values())]
    if wrong:
        raise NoSuchCode(f"no sheet {wrong[0]} in this rig's folder; it has {', '.join((FRONT, *code.values()))}")
    found += [each for each in told if each.sheet.name in names or each.code in names]
    for sheet in left_out:
        if sheet.name in names:
            found.append(Document(_told(sheet), title.replace(sheet=sheet.title), 0, count))
    return tuple(found)


def _there(results: Results, modules: list[str], kept: Kept) -> list[str]:
    """The sheets that the rig has. None is made or imported to be asked where it is known of the same rig."""
    mark = results.get(KnownFindings).mark
    make = partial(_asked, results, modules)
    return kept.named("sheets-there", mark, make, list) if mark else make()


def _asked(results: Results, modules: list[str]) -> list[str]:
    return [module for module in modules if _is_there(results, module)]


def _is_there(results: Results, module: str) -> bool:
    """Whether a rig has the sheet. One that no rig lacks is not made to be asked; nor is one that takes long, which says it by `THERE`."""
    sheet, there = member(module, "SHEET"), vars(sys.modules[module]).get("THERE")
    if needed(sheet)[1] is Sheet:
        return True
    return bool(results.call(there)) if there else isinstance(made(results, sheet), Sheet)


def is_name(word: str) -> bool:
    """Whether a word is the name of a sheet or view that can be made without the rest of the folder."""
    return word in sheet_names()[1:] or any(sheet_name(made.__module__) == word for made in members(VIEWS, "VIEW"))


def alone(results: Results, names: tuple[str, ...]) -> tuple[Sheet, ...]:
    """The sheets and views of these names, without the codes of others: the folder is not made for them."""
    modules = (module for module in sheet_modules() if sheet_name(module) in names)
    found = [_told(made(results, member(module, "SHEET"))) for module in modules]
    found += [results.call(each) for each in members(VIEWS, "VIEW") if sheet_name(each.__module__) in names]
    return tuple(written_out(sheet, {}) for sheet in found)


def saying(sheet: Sheet) -> Sheet:
    """Tables that have no rows and nothing to say in their place, and paragraphs without a line, are silent."""
    silent = tuple(block for block in sheet.blocks if not block.says)
    return (
        sheet.replace(blocks=tuple(block for block in sheet.blocks if block.says), silent=silent) if silent else sheet
    )


def _told(sheet: Sheet | NoSheet) -> Sheet:
    """The sheet, or one that says why there is none."""
    if isinstance(sheet, Sheet):
        return sheet
    return Sheet(sheet.name, sheet.title, "", (Paragraph("reason", (sheet.reason,)),))


def room(module: str) -> str:
    """The room of a sheet's module, a key of `LETTERS`."""
    return module.split(".")[-2]


def _order(module: str) -> tuple[int, int, str]:
    return list(LETTERS).index(room(module)), member(module, "PLACE"), module


def sheet_name(module: str) -> str:
    """The name of a module's sheet."""
    return module.rpartition(".")[2].replace("_", "-")


def _line(module: str) -> str:
    return (sys.modules[module].__doc__ or "").split("\n")[0].rstrip(".")
