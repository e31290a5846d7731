"""Both designs -> the sheets of the folder that say something else now: the ones to print, the old ones to shred."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial
from typing import Any

from rigc.analysis.findings.known_findings import KnownFindings
from rigc.analysis.kept import Kept
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Paragraph, Sheet
from rigc.reports.folder import all_sheets, room, sheet_modules, sheet_name
from rigc.reports.front.made import made
from rigc.reports.front.sheet_codes import FRONT, codes, in_runs

OWN = "rework"


def folder_lines(old: Results, new: Results, previous: Previous) -> Paragraph:
    """By their codes in the folder; an old sheet by the code that it has there, where that is another. Title blocks don't count:
    they differ on every sheet. A sheet that can't be made is one to look at, so it counts as another one. Where it is known of the same
    two rigs, no sheet of the old one is made."""
    mark = new.get(KnownFindings).mark
    make = partial(_lines, old, new, previous)
    lines: list[str] = new.get(Kept).named("sheets-to-swap", mark, make, list) if mark else make()
    return Paragraph("folder", tuple(lines), heading="Sheets to swap, by code")


def _lines(old: Results, new: Results, previous: Previous) -> list[str]:
    before, after = dict[str, bool](), dict[str, bool]()
    same: set[str] = set()
    modules = sheet_modules()
    for module, maker in zip(modules, all_sheets(), strict=True):
        own = sheet_name(module) == OWN
        was, now = (None, None) if own else (_sheet(old, maker), _sheet(new, maker))
        before[module], after[module] = not own and not isinstance(was, NoSheet), not isinstance(now, NoSheet)
        if not own and now is not None and was == now and not _renamed_on(now, previous):
            same.add(module)
    then, here = (_codes(there) for there in (before, after))
    both = [module for module in modules if before[module] and after[module] and module not in same]
    moved = [(then[module], here[module]) for module in both if then[module] != here[module]]
    told = (
        ("new, old ones to shred", [FRONT, *(here[module] for module in both if then[module] == here[module])]),
        ("new", [here[module] for module in modules if after[module] and not before[module]]),
        ("to shred", [then[module] for module in modules if before[module] and not after[module]]),
        ("new in their heads alone", [here[module] for module in modules if module in same and after[module]]),
    )
    lines = [f"{what}: {in_runs(codes)}" for what, codes in told if codes]
    return [*lines, *(f"{now} takes the place of the old {was}" for was, now in moved)]


def _codes(there: dict[str, bool]) -> dict[str, str]:
    """The code of each module's sheet in a folder of those that are there."""
    return codes((room(module), module) for module, is_there in there.items() if is_there)


def _sheet(results: Results, sheet: Callable[..., Any]) -> Sheet | NoSheet | None:
    """None where the making fails: that is told where the sheet itself is asked for, and no reason to have no rework."""
    try:
        return made(results, sheet)
    except Exception:
        return None


def _renamed_on(sheet: Sheet | NoSheet | None, previous: Previous) -> bool:
    """The old results call things by their new names: a sheet that names such a thing differs all the same."""
    if not previous.renamed:
        return False
    words = "|".join(re.escape(now) for now, _ in previous.renamed)
    return re.search(rf"(?<![\w-])({words})(?![\w-])", repr(_texts(sheet))) is not None


def _texts(value: Any) -> Any:
    """Every text of a sheet, however deep."""
    if isinstance(value, str):
        return value
    if isinstance(value, tuple | list):
        return [_texts(each) for each in value]
    return [_texts(each) for each in vars(value).values()] if hasattr(value, "FIELDS") else None
