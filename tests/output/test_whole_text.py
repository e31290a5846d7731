"""A whole sheet as plain text: its blocks in order, and nothing in it steers a terminal."""

from __future__ import annotations

from rigc.output.whole_text import render
from rigc.reports.content import Cell, Column, Drawing, Paragraph, Row, Sheet, Table


def test_paragraphs_and_tables_in_order() -> None:
    table = Table(
        "t", "Things", (Column("thing"), Column("mass", "g", number=True)), (Row((Cell("a\x1b[2J"), Cell("40"))),)
    )
    blocks = (Paragraph("p", ("one\nline", "two"), heading="Head"), table, Drawing("d", "D", "", 1, 1, ()))
    assert render(Sheet("s", "A sheet", "crew", blocks)) == (
        "A sheet\n\nHead\none line\ntwo\n\nThings\nthing  mass (g)\n-----  --------\na [2J        40\n"
    )
