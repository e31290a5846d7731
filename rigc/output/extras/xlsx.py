"""The tables of a sheet -> one workbook, by openpyxl (extra `tables`): a worksheet for each, headings with units, numbers as numbers.

Every text is a text, also one that begins like a formula. Total rows are left out, as in CSV, and what is set apart beside cells stands in
the last column, `marks`. The same sheet gives the same bytes.
"""

from __future__ import annotations

import io
import re
import zipfile
from typing import Any

from rigc.output.escapes import printable
from rigc.output.extras.missing_extra import of_extra
from rigc.reports.content import Cell, Column, Document, Table

_NUMBER = re.compile(r"[+\-−]?\d+(?:\.\d+)?")
_WIDEST = 48


def files(document: Document) -> tuple[tuple[str, bytes], ...]:
    """Name and bytes of the workbook of a document; none where it has no tables. Raises `MissingExtra`."""
    has_tables = any(isinstance(block, Table) for block in document.sheet.blocks)
    return ((f"{document.sheet.name}.xlsx", render(document)),) if has_tables else ()


def render(document: Document) -> bytes:
    """The workbook of a document that has tables. Raises `MissingExtra` where the package is not installed."""
    workbook = new_workbook()
    workbook.properties.title = printable(document.sheet.title)
    names: list[str] = []
    for table in document.sheet.blocks:
        if isinstance(table, Table):
            names.append(_name(table.caption or table.name, names))
            _fill(workbook.create_sheet(names[-1]), table)
    return saved(workbook, document.title.date)


def new_workbook() -> Any:
    """A workbook without worksheets. Raises `MissingExtra`."""
    with of_extra("tables", "XLSX", "openpyxl"):
        from openpyxl import Workbook
    workbook = Workbook()
    workbook.remove(workbook.active)
    workbook.properties.creator = "rigc"
    return workbook


def write(sheet: Any, row: int, column: int, text: str) -> Any:
    """Writes a text into a cell, rows and columns counted from 1, so that no program takes it for a formula."""
    cell = sheet.cell(row, column, "\n".join(map(printable, text.splitlines())))
    cell.data_type = "s"
    if text[:1] in tuple("=+-@"):
        cell.quotePrefix = True
    return cell


def heading(sheet: Any, texts: tuple[str, ...]) -> None:
    """Writes the first row, which stays in sight, and sets it apart."""
    from openpyxl.styles import Alignment, Font

    for column, text in enumerate(texts, 1):
        cell = write(sheet, 1, column, text)
        cell.font = Font(bold=True)
        cell.alignment = Alignment(wrap_text=True, vertical="top")
    sheet.freeze_panes = "B2"


def saved(workbook: Any, day: str) -> bytes:
    """The bytes of a workbook, with this day (ISO date) as the one on which it was saved: the hour of the run is no part of it."""
    made, settled = io.BytesIO(), io.BytesIO()
    workbook.save(made)
    with zipfile.ZipFile(made) as old, zipfile.ZipFile(settled, "w", zipfile.ZIP_DEFLATED) as new:
        for entry in old.infolist():
            data = old.read(entry)
            if entry.filename == "docProps/core.xml":
                data = re.sub(rb"\d{4}-\d\d-\d\dT[\d:]+Z", f"{day}T00:00:00Z".encode(), data)
            new.writestr(zipfile.ZipInfo(entry.filename), data, zipfile.ZIP_DEFLATED)
    return settled.getvalue()


def _fill(sheet: Any, table: Table) -> None:
    heads = tuple(f"{each.head} ({each.unit})" if each.unit else each.head for each in table.columns)
    heading(sheet, (*heads, "marks"))
    widths = [len(each) for each in heads]
    for number, row in enumerate((each for each in table.rows if not each.total), 2):
        marks = "; ".join(f"{head}: {cell.mark}" for head, cell in zip(heads, row.cells, strict=True) if cell.mark)
        for column, cell in enumerate(row.cells, 1):
            _put(sheet, number, column, table.columns[column - 1], cell)
            widths[column - 1] = max(widths[column - 1], len(cell.text))
        write(sheet, number, len(heads) + 1, marks)
    for at, width in enumerate(widths, 1):
        sheet.column_dimensions[sheet.cell(1, at).column_letter].width = min(_WIDEST, max(8, width + 2))


def _put(sheet: Any, row: int, at: int, column: Column, cell: Cell) -> None:
    if column.number and _NUMBER.fullmatch(cell.text):
        sheet.cell(row, at).value = float(cell.text.replace("−", "-"))
    elif cell.text:
        write(sheet, row, at, cell.text)


def _name(wanted: str, taken: list[str]) -> str:
    """A name that a worksheet can have, which nobody has."""
    plain = re.sub(r"[\[\]:*?/\\']", " ", printable(wanted)).strip()[:28] or "table"
    return plain if plain.lower() not in map(str.lower, taken) else f"{plain} {len(taken) + 1}"
