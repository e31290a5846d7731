"""XLSX -> its cells, by openpyxl (extra `tables`): as shown, with formulas, merged cells, hidden and struck-out rows."""

from __future__ import annotations

import io
import re
from datetime import date, datetime, time
from typing import Any

from rigc.files.intake.books.book import (
    MOST_COLUMNS,
    MOST_ROWS,
    Book,
    BookCell,
    BookRow,
    BookSheet,
    NoBook,
    letters,
    refuse_extent,
    refuse_zip,
)
from rigc.output.extras.missing_extra import of_extra

_SUFFIX = re.compile(r'[0#][^";]*"\s*([^"]+?)\s*"')


def read(name: str, data: bytes, saved: str) -> Book:
    """The workbook. Raises `NoBook`, and `MissingExtra` where the package is not installed."""
    with of_extra("tables", "XLSX", "openpyxl"):
        import openpyxl
    refuse_zip(name, data)
    try:
        shown = openpyxl.load_workbook(io.BytesIO(data), data_only=True)
        typed = openpyxl.load_workbook(io.BytesIO(data))
    except Exception as fault:  # a broken file can fail in any way
        raise NoBook(
            f"'{name}' can't be read as XLSX: {type(fault).__name__}", "open it in its program and save it anew"
        ) from None
    changed = typed.properties.modified
    day = changed.date().isoformat() if isinstance(changed, datetime) else saved
    return Book(name, day, tuple(_sheet(name, shown[each.title], each) for each in typed.worksheets))


def _sheet(name: str, shown: Any, typed: Any) -> BookSheet:
    held = [at for at, cell in typed._cells.items() if cell.value is not None or cell.comment is not None]
    last_row, last_column = max((row for row, _ in held), default=0), max((column for _, column in held), default=0)
    refuse_extent(name, last_row, last_column)
    merged: dict[tuple[int, int], tuple[int, int, int]] = {}
    for area in typed.merged_cells.ranges:
        last_row, across = max(last_row, min(area.max_row, MOST_ROWS)), area.max_col - area.min_col + 1
        last_column = max(last_column, min(area.max_col, MOST_COLUMNS))
        for row in range(area.min_row, min(area.max_row, MOST_ROWS) + 1):
            for column in range(area.min_col, min(area.max_col, MOST_COLUMNS) + 1):
                merged[row, column] = area.min_row, area.min_col, across
    rows = []
    for number in range(1, last_row + 1):
        cells: dict[int, BookCell] = {}
        struck = []
        for column in range(1, last_column + 1):
            row, at, across = merged.get((number, column), (number, column, 1))
            cell = _cell(shown.cell(row, at), typed.cell(row, at), across)
            if cell is not None:
                cells[column - 1] = cell
                struck.append(bool(typed.cell(row, at).font and typed.cell(row, at).font.strike))
        out = "hidden" if typed.row_dimensions[number].hidden else "struck through" if struck and all(struck) else ""
        rows.append(BookRow(number, cells, out))
    return BookSheet(typed.title, tuple(rows), _hidden(typed), "" if typed.sheet_state == "visible" else "hidden")


def _hidden(sheet: Any) -> frozenset[int]:
    spans = (each for each in sheet.column_dimensions.values() if each.hidden and each.min)
    return frozenset(column - 1 for each in spans for column in range(each.min, min(each.max, MOST_COLUMNS) + 1))


def _cell(shown: Any, typed: Any, across: int) -> BookCell | None:
    value = shown.value
    formula = str(getattr(typed.value, "text", typed.value)) if typed.data_type == "f" else ""
    remark = typed.comment.text.strip() if typed.comment else ""
    place = f"{letters(typed.column - 1)}{typed.row}"
    if value is None or (isinstance(value, str) and not value.strip()):
        return BookCell(place, "", "text", formula, remark, across) if formula or remark else None
    text, kind = _shown(value, str(typed.number_format))
    return BookCell(place, text, "error" if shown.data_type == "e" else kind, formula, remark, across)


def _shown(value: Any, form: str) -> tuple[str, str]:
    """The value as the program shows it, with the unit that its number format puts behind it."""
    if isinstance(value, datetime):
        return (value.date().isoformat() if value.time() == time() else value.isoformat(" ")), "date"
    if isinstance(value, date | time):
        return value.isoformat(), "date"
    if isinstance(value, bool):
        return ("yes" if value else "no"), "text"
    if isinstance(value, int | float):
        unit = _SUFFIX.search(form)
        number = format(round(value * 100, 10) if form.endswith("%") else value, ".10g")
        return number + (f" {unit[1]}" if unit else " %" if form.endswith("%") else ""), "number"
    return str(value).strip(), "text"
