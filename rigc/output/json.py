"""Tables -> JSON: for each table, by name, its records and its totals, with the same keys as the columns of the CSV; and a page with an answer."""

from __future__ import annotations

import json
import re

from rigc.output.column_names import column_names
from rigc.output.escapes import spelled_out
from rigc.reports.content import Cell, Column, Row, Sheet, Table

FORMAT = 1  # counts up when a reader of the old shape would go wrong

_NUMBER = re.compile(r"[-−]?\d+(\.\d+)?")


def render_tables(tables: tuple[Table, ...]) -> str:
    """The tables as JSON, UTF-8, indented. A cell of a number column is a number where its text is one; an empty cell is null."""
    held = {table.name: _held(table) for table in tables}
    return spelled_out(json.dumps({"format": FORMAT, "tables": held}, ensure_ascii=False, indent=2)) + "\n"


def _held(table: Table) -> dict[str, object]:
    return {
        "records": [_record(table, row) for row in table.rows if not row.total],
        "totals": [_record(table, row) for row in table.rows if row.total],
    }


def _record(table: Table, row: Row) -> dict[str, object]:
    names = column_names(table)
    record: dict[str, object] = {
        name: _value(column, cell) for name, column, cell in zip(names, table.columns, row.cells, strict=True)
    }
    marks = {name: cell.mark for name, cell in zip(names, row.cells, strict=True) if cell.mark}
    record["marks"] = marks | ({"row": f"changed {row.changed}"} if row.changed else {})
    return record


def _value(column: Column, cell: Cell) -> object:
    text = cell.text.strip()
    if not column.number or not _NUMBER.fullmatch(text):
        return text or None
    plain = text.replace("−", "-")
    return float(plain) if "." in plain else int(plain)


def render_page(sheet: Sheet, answer: str, verdict: str) -> str:
    """The shape of `rigc show --to json`, with `answer` (yes, with work, no, not known) and `verdict` before the tables."""
    held = json.loads(render_tables(tuple(block for block in sheet.blocks if isinstance(block, Table))))
    told = {"format": held["format"], "answer": answer, "verdict": verdict, "tables": held["tables"]}
    return spelled_out(json.dumps(told, ensure_ascii=False, indent=2)) + "\n"
