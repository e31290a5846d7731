"""One table -> CSV after RFC 4180: a header line with units, lines ended by CR LF, quotes only where needed.

The last column, `marks`, holds what is set apart beside cells (`load_ma: assumed`), and the numbers of the changes of a row that
this revision changed (`row: changed 3`). Total rows are left out: whoever adds up a column must not count it twice. A text that a
spreadsheet would take for a formula gets an apostrophe in front, as one types it there.
"""

from __future__ import annotations

import csv
import io
import re

from rigc.output.column_names import column_names
from rigc.output.escapes import straight
from rigc.reports.content import Table


def render_tables(tables: tuple[Table]) -> str:
    """The one table as CSV. Write it without translating line ends."""
    (table,) = tables
    names = column_names(table)
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([*names, "marks"])
    for row in table.rows:
        if not row.total:
            marks = [f"{name}: {cell.mark}" for name, cell in zip(names, row.cells, strict=True) if cell.mark]
            marks += [f"row: changed {row.changed}"] if row.changed else []
            writer.writerow([_harmless(cell.text) for cell in row.cells] + [_harmless("; ".join(marks))])
    return text.getvalue()


_FORMULA = re.compile(r"[=@\t\r\n＝＠＋－]|[+-](?![\d.,]*(?: [^\s=+\-@|!(]{1,8})*$)")


def _harmless(text: str) -> str:
    text = straight(text)
    return f"'{text}" if _FORMULA.match(text) else text
