"""A sheet -> plain text for a terminal or a message: paragraphs and tables in the order of the sheet."""

from __future__ import annotations

from rigc.output.escapes import printable
from rigc.output.text import render_tables
from rigc.reports.content import Paragraph, Sheet, Table


def render(sheet: Sheet) -> str:
    """The title, then each block after an empty line; drawings are left out."""
    parts = [f"{printable(sheet.title)}\n"]
    for block in sheet.blocks:
        if isinstance(block, Paragraph):
            head = [printable(block.heading)] if block.heading else []
            parts.append("".join(f"{line}\n" for line in (*head, *map(printable, block.lines))))
        elif isinstance(block, Table):
            parts.append(render_tables((block,)))
    return "\n".join(parts)
