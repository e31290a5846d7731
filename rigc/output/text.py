"""Tables -> aligned columns for the terminal, each table under its caption."""

from __future__ import annotations

from unicodedata import combining, east_asian_width

from rigc.output.escapes import printable
from rigc.reports.content import Cell, Drawing, Paragraph, Table

GAP = "  "


def render_tables(tables: tuple[Table, ...]) -> str:
    """The tables as plain text, one row a line, however wide: a terminal's width is not known here. Boxes to tick are for paper."""
    return "\n".join(_table(table) for table in tables)


def render_drawings(drawings: tuple[Drawing, ...]) -> str:
    """What drawings there are, in words, one a line: a terminal can't show them."""
    return "".join(
        printable(f"drawing '{each.name}': {each.title}, {each.width_mm:g} x {each.height_mm:g} mm") + "\n"
        for each in drawings
    )


def render_statements(paragraphs: tuple[Paragraph, ...]) -> str:
    """The statements among the paragraphs, to be pasted into a source; nothing of the others, which are for paper."""
    found = [each for each in paragraphs if each.kind == "statements"]
    return "".join("\n" + "".join(f"{_indent(line)}{printable(line)}\n" for line in each.lines) for each in found)


def _indent(line: str) -> str:
    return " " * (len(line) - len(line.lstrip(" ")))


def _table(table: Table) -> str:
    if not table.rows:
        return f"{printable(table.caption)}\n{printable(table.empty)}\n"
    head = [_head(column.head, column.unit) for column in table.columns]
    body = [
        [_cell(cell, row.changed if place == 0 else "") for place, cell in enumerate(row.cells)] for row in table.rows
    ]
    widths = [max(_width(text) for text in column) for column in zip(head, *body, strict=True)]
    right = [column.number for column in table.columns]
    rule = GAP.join("-" * width for width in widths)
    rows = [_row(texts, widths, right) for texts in [head, *body]]
    lines = [rows[0], rule]
    for row, text in zip(table.rows, rows[1:], strict=True):
        lines += [rule, text] if row.total else [text]
    return "\n".join([printable(table.caption), *(text.rstrip() for text in lines)]) + "\n"


def _head(head: str, unit: str) -> str:
    return printable(f"{head} ({unit})" if unit else head)


def _cell(cell: Cell, changed: str) -> str:
    told = f"{cell.text} ({cell.mark})" if cell.mark else cell.text
    return printable(f"{told} Δ {changed}" if changed else told)


def _row(texts: list[str], widths: list[int], right: list[bool]) -> str:
    padded = []
    for text, width, to_right in zip(texts, widths, right, strict=True):
        space = " " * (width - _width(text))
        padded.append(space + text if to_right else text + space)
    return GAP.join(padded)


def _width(text: str) -> int:
    return sum(0 if combining(sign) else 2 if east_asian_width(sign) in "WF" else 1 for sign in text)
