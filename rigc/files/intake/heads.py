"""The rows of a sheet -> which column of it is which of ours, in one row of headings or in two."""

from __future__ import annotations

import re
from functools import cache

from rigc.diagnostics.near import nearest
from rigc.files.intake.books.book import BookRow
from rigc.files.intake.cells.amounts import UNITS, unit_of
from rigc.files.intake.cells.sizes import ORDER
from rigc.model.asked_facts import COLUMNS, AskedColumn
from rigc.record import Record


class Head(Record):
    """A column of the sheet as it is read: ours, and the unit that its heading tells for it (else empty)."""

    ours: AskedColumn
    unit: str


class Heads(Record):
    """A row of headings: our columns by the number of the sheet's column, and the headings that are none of ours."""

    row: int
    known: dict[int, Head]
    strange: dict[int, str]

    def at(self, key: str) -> int | None:
        """Where the column of that key stands."""
        return next((at for at, head in self.known.items() if head.ours.key == key), None)


def heads(row: BookRow, above: BookRow | None) -> Heads | None:
    """The headings in a row, read with those of groups of columns in the row `above`; None where it is no row of headings.

    One is where a column with the names stands beside another of ours, or alone in its row.
    """
    groups = _groups(above, row)
    known: dict[int, Head] = {}
    strange: dict[int, str] = {}
    for at, cell in row.cells.items():
        found = _head(cell.text, groups.get(at, ""))
        if found is None or any(found.ours is other.ours for other in known.values()):
            strange[at] = cell.text
        else:
            known[at] = found
    for at in above.cells if groups and above is not None else {}:
        if at not in row.cells:
            found = _head(groups[at], "")
            if found is not None and all(found.ours is not each.ours for each in known.values()):
                known[at] = found
            else:
                strange[at] = groups[at]
    keys = {head.ours.key for head in known.values()}
    if "name" not in keys or not known.keys() & row.cells.keys() or len(keys) < 2 - (len(row.cells) == 1):
        return None
    return Heads(row.number, known, strange)


def near_heading(typed: str) -> str:
    """The heading of ours that is most like one of the sheet's."""
    near = nearest(_plain(typed), _by_heading())
    return _by_heading()[near].heading if near else ""


def _groups(above: BookRow | None, row: BookRow) -> dict[int, str]:
    """The heading of a group holds as far as the next one."""
    groups: dict[int, str] = {}
    if above is None or above.number != row.number - 1:
        return groups
    last = ""
    for at in range(max((*row.cells, *above.cells), default=-1) + 1):
        cell = above.cells.get(at)
        last = cell.text if cell is not None else last
        if last and (cell is not None or at in row.cells):
            groups[at] = last
    return groups


def _head(typed: str, group: str) -> Head | None:
    """Ours of a heading, tried with its group's before, then alone; with the unit behind it, or in it."""
    for text in (f"{group} {typed}" if group and group != typed else "", typed):
        plain = _plain(text)
        column = _by_heading().get(plain)
        if column is not None:
            return Head(column, _unit(typed, column.unit) or _unit(group, column.unit) or _of_key(plain, column))
        *words, last = plain.split() or [""]
        column = _by_heading().get(" ".join(words).removesuffix(" in"))
        if column is not None and unit_of(last, column.unit):
            return Head(column, unit_of(last, column.unit))
    return None


def _plain(typed: str) -> str:
    """A heading without what stands in brackets, and without signs."""
    text = re.sub(r"[(\[].*?[)\]]", " ", typed.lower())
    text = re.sub(rf"(?<=\w)\s+{ORDER}", " ", text)
    return " ".join(re.sub(r"[^\w/ ×]+", " ", text).split())


def _unit(typed: str, kind: str) -> str:
    """The unit in brackets in a heading, if it is one that its column may have."""
    words = re.findall(r"[(\[]\s*(?:in\s+(?=\w))?(.*?)\s*[)\]]", typed)
    bare = [re.sub(r"\s*\b[ad]\.?c\b\.?|(?<=v)[ad]c\b", "", each, flags=re.IGNORECASE) for each in words]
    return next((unit_of(each, kind) for each in (*words, *bare) if unit_of(each, kind)), "")


def _of_key(plain: str, column: AskedColumn) -> str:
    """A heading that is itself a unit: `mA`."""
    return unit_of(plain, column.unit) if plain in UNITS.get(column.unit, {}) and len(plain) > 1 else ""


@cache
def _by_heading() -> dict[str, AskedColumn]:
    return {_plain(said): column for column in COLUMNS for said in (column.heading, *column.others)}
