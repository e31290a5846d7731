"""The empty list for a client to fill in, as XLSX: a column for each that is read, with the words to choose from, and how to fill them in."""

from __future__ import annotations

from typing import Any

from rigc.files.intake.list_found import HOW_TO
from rigc.model.asked_facts import COLUMNS, FACTS, AskedColumn
from rigc.output.extras.xlsx import heading, new_workbook, saved, write

LISTED = tuple(each for each in COLUMNS if each.handed_out)
"""The columns of the empty list."""
_ROWS = 200
_BARE = ("mm", "g", "mA", "ms", "dBu")
"""Units that the heading names, so that a cell may be a number alone; of the others each cell names its own."""
_DAY = "2026-01-01"


def template() -> bytes:
    """The workbook. Raises `MissingExtra` where the package is not installed."""
    workbook = new_workbook()
    units = workbook.create_sheet("Units")
    heading(units, tuple(map(_heading, LISTED)))
    for at, column in enumerate(LISTED, 1):
        letter = units.cell(1, at).column_letter
        units.column_dimensions[letter].width = max(12, len(column.example) + 4)
        _guide(units, f"{letter}2:{letter}{_ROWS}", column)
    _how_to(workbook.create_sheet("How to fill in"))
    return saved(workbook, _DAY)


def _heading(column: AskedColumn) -> str:
    unit = f" ({column.unit})" if column.unit in _BARE and column.key != "inlet" else ""
    return f"{column.heading}{unit}{' *' if _needed(column) else ''}"


def _needed(column: AskedColumn) -> bool:
    return column.key == "name" or any(fact.key == column.fact and fact.needed for fact in FACTS)


def _guide(sheet: Any, cells: str, column: AskedColumn) -> None:
    """What a spreadsheet program says when the cell is chosen, and the words that it lets one choose from."""
    from openpyxl.worksheet.datavalidation import DataValidation

    words = ",".join(column.words)
    guide = DataValidation(
        type="list" if words else None,
        formula1=f'"{words}"' if words else None,
        allow_blank=True,
        showInputMessage=True,
    )
    guide.promptTitle, guide.prompt = column.heading[:32], f"{column.how}; for example {column.example}"[:255]
    if words:
        guide.showErrorMessage, guide.errorStyle = True, "warning"
        guide.errorTitle, guide.error = (
            column.heading[:32],
            f"Choose one of: {', '.join(column.words)}. Leave it empty if you do not know.",
        )
    guide.add(cells)
    sheet.add_data_validation(guide)


def _how_to(sheet: Any) -> None:
    from openpyxl.styles import Alignment

    heading(sheet, (HOW_TO, "What to write", "For example", "One of"))
    lines = (
        (
            "Leave empty what you do not know, rather than guess. A row is one unit, its front towards the player.",
            "",
            "",
            "",
        ),
        (
            "*: without it checks can't tell. A number with another unit than that of the heading bears its own: 2.75 in.",
            "",
            "",
            "",
        ),
        *((_heading(each), each.how, each.example, ", ".join(each.words)) for each in LISTED),
    )
    for row, texts in enumerate(lines, 2):
        for column, text in enumerate(texts, 1):
            write(sheet, row, column, text).alignment = Alignment(wrap_text=True, vertical="top")
    for letter, width in zip("ABCD", (44, 64, 28, 40), strict=True):
        sheet.column_dimensions[letter].width = width
