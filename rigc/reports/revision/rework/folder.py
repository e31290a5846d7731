"""Both designs -> the sheets of the folder that say something else now: the ones to print, the old ones to shred."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from rigc.analysis.control.midi_channel import in_runs
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Paragraph, Sheet
from rigc.reports.folder import all_sheets
from rigc.reports.made import made

OWN = "rework"


def folder_lines(old: Results, new: Results, previous: Previous) -> Paragraph:
    """By their numbers in the folder. Title blocks don't count: they differ on every sheet. A sheet that can't be made is
    one to look at, so it counts as another one."""
    put_in: list[int] = []
    shred: list[int] = []
    stay: list[int] = []
    for number, sheet in enumerate(all_sheets(), 1):
        own = sheet.__name__.replace("_", "-") == OWN
        before, after = (None, None) if own else (_sheet(old, sheet), _sheet(new, sheet))
        now = own or not isinstance(after, NoSheet)
        same = not own and after is not None and before == after and not _renamed_on(after, previous)
        if same and now:
            stay.append(number)
        elif now:
            put_in.append(number)
        if not same and not own and not isinstance(before, NoSheet):
            shred.append(number)
    told = (
        ("new, old ones to shred", [number for number in put_in if number in shred]),
        ("new", [number for number in put_in if number not in shred]),
        ("to shred", [number for number in shred if number not in put_in]),
        ("new in their heads alone", stay),
    )
    lines = tuple(f"{what}: {in_runs(numbers)}" for what, numbers in told if numbers)
    return Paragraph("folder", lines, heading="Sheets to swap, by number")


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
