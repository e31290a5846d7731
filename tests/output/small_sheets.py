"""Invented sheets, small and awkward, that the tests of the output share, and the rigs whose pages are looked at."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from cases import ROOT

from rigc.reports.content import Block, Cell, Column, Document, Paragraph, Row, Sheet, Table, TitleBlock

AWKWARD = "a|b <i>&amp; \\ `c` *d* [e](f)\nשלום 🎸"
COLUMNS = (Column("lead"), Column("cut", "mm", number=True), Column("status"))
TITLE = TitleBlock(
    rig="Night Ferry (invented)",
    code="NF-2",
    client="Ada Quill (invented)",
    sheet="cable list",
    revision="C7",
    date="2026-03-14",
    drawn="K. Moor",
    checked="",
    source_hash="9f31c2ab",
)
CAUTION = Paragraph("power_off", ("Unplug mains before a lead is changed.",), kind="caution")
NOTE = Paragraph("crew", ("The long lead goes under the carpet.",), kind="note")
EMPTY = Table("spares", "Spares", COLUMNS, (), empty="no spares are carried")


DAILY = "examples/harbour-keys/board.rig"
RIGS = (
    DAILY,
    *(f"examples/{name}/board.rig" for name in ("long-haul", "long-haul-d", "back-bedroom", "tide-line")),
    *sorted(path.relative_to(ROOT).as_posix() for path in (Path(__file__).parent / "rigs").glob("*.rig")),
)
"""Rigs of unlike kinds and sizes, as paths; what is long of each is done of the first each day."""


def first_daily(*more: Any) -> list[Any]:
    """The rigs as parameters, each with `more` behind it: all but the first are long."""
    return [
        pytest.param(*(each, *more), marks=() if each == DAILY else pytest.mark.long, id="-".join((_name(each), *more)))
        for each in RIGS
    ]


def _name(path: str) -> str:
    parts = Path(path)
    return parts.parent.name if parts.stem == "board" else parts.stem


def row(*texts: str, total: bool = False) -> Row:
    return Row(tuple(Cell(text) for text in texts), total=total)


LEADS = Table(
    "leads",
    "Leads",
    COLUMNS,
    (
        row("L01", "153", "make"),
        Row((Cell("L02"), Cell("1.5", mark="assumed"), Cell("make", strong=True, mark="FAIL"))),
        row("total", "154.5", "", total=True),
    ),
    tick=True,
)


def document(*blocks: Block, draft: bool = False, landscape: bool = False, name: str = "cable-list") -> Document:
    """A document of these blocks, with the title block of the invented rig."""
    sheet = Sheet(name, "Cable list", "bench", blocks, landscape)
    return Document(sheet, TITLE.replace(draft=draft), 3, 4)
