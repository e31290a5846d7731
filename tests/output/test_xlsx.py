"""A sheet's tables as a workbook: numbers are numbers, every text is a text, and the same sheet gives the same bytes."""

from __future__ import annotations

import io

import openpyxl
import pytest
from small_sheets import AWKWARD, CAUTION, EMPTY, LEADS, TITLE, document, row

from rigc.output.extras.xlsx import files, render
from rigc.reports.content import Column, Table


def test_each_table_is_a_worksheet() -> None:
    book = openpyxl.load_workbook(io.BytesIO(render(document(CAUTION, LEADS, EMPTY))))
    assert book.sheetnames == ["Leads", "Spares"]
    assert [[cell.value for cell in line] for line in book["Leads"].iter_rows()] == [
        ["lead", "cut (mm)", "status", "marks"],
        ["L01", 153, "make", None],
        ["L02", 1.5, "make", "cut (mm): assumed; status: FAIL"],
    ]
    assert [[cell.value for cell in line] for line in book["Spares"].iter_rows()] == [
        ["lead", "cut (mm)", "status", "marks"]
    ]
    assert book.properties.modified.date().isoformat() == TITLE.date


@pytest.mark.parametrize("text", ["=1+1", "+1+1", "-1", "@SUM(A1)", "=HYPERLINK(0)", AWKWARD, "#REF!", "1e3"])
def test_a_text_is_a_text(text: str) -> None:
    table = Table("t", "[a]: b/c*?'", (Column("what"),), (row(text),))
    (sheet,) = openpyxl.load_workbook(io.BytesIO(render(document(table)))).worksheets
    cell = sheet["A2"]
    assert (cell.value, cell.data_type) == (text, "s")
    assert cell.quotePrefix == (text[0] in "=+-@")


def test_the_same_sheet_gives_the_same_bytes() -> None:
    assert files(document(LEADS)) == (("cable-list.xlsx", render(document(LEADS))),)
    assert files(document(CAUTION)) == ()


def test_names_of_worksheets_differ() -> None:
    tables = (LEADS, LEADS.replace(caption="leads"), LEADS.replace(caption="x" * 40), LEADS.replace(caption="x" * 41))
    names = openpyxl.load_workbook(io.BytesIO(render(document(*tables)))).sheetnames
    assert len({name.lower() for name in names}) == 4 and all(len(name) <= 31 for name in names)
