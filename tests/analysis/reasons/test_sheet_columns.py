"""Every number of the sheets has a reason, and the reason gives the very text that the sheet prints."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from analysis.reasons.columns import FURTHER, PART_A
from cases import ROOT, results

from rigc.analysis.computations.loading import Loading
from rigc.analysis.reasoning import Reasoning
from rigc.analysis.reasons.reason import NOT_KNOWN
from rigc.analysis.reasons.section_loading import named_sections
from rigc.analysis.results import Results
from rigc.discover import members
from rigc.output.column_names import column_names
from rigc.reports.content import Sheet, Table

RIGS = [path.relative_to(ROOT).as_posix() for path in sorted(ROOT.glob("examples/*/board.rig"))]
SHEETS = [*PART_A, *FURTHER]
UNKNOWN = ("", "?")
"""What a sheet prints where a figure is not known, or where there is none."""


@cache
def made(rig: str) -> tuple[Results, Reasoning]:
    """The results and reasons of an example."""
    found = results(ROOT / Path(rig))
    return found, Reasoning(found)


@cache
def sheet(rig: str, name: str) -> Sheet:
    """A sheet of an example."""
    (maker,) = (each for each in members("rigc.reports.sheets", "SHEET") if each.__name__ == name.replace("-", "_"))
    found: Sheet = made(rig)[0].call(maker)
    return found


def tables(rig: str, name: str) -> Iterator[tuple[str, Table, int]]:
    """The tables of a sheet with the name that this test knows them by; the tables of chains are counted."""
    chains = 0
    for block in sheet(rig, name).blocks:
        if isinstance(block, Table):
            chains += block.name.startswith("signal_")
            yield "signal" if block.name.startswith("signal_") else block.name, block, chains


@pytest.mark.parametrize("name", PART_A)
@pytest.mark.parametrize("rig", RIGS)
def test_every_number_column_has_a_reason(rig: str, name: str) -> None:
    for known, table, _ in tables(rig, name):
        columns = {key for key, column in zip(column_names(table), table.columns, strict=True) if column.number}
        if known not in ("batteries", "shared_returns"):
            assert columns <= PART_A[name].get(known, {}).keys(), f"{name}: {table.name}"


@pytest.mark.parametrize("name", SHEETS)
@pytest.mark.parametrize("rig", RIGS)
def test_the_reason_gives_the_text_of_the_cell(rig: str, name: str) -> None:
    checked = 0
    for known, table, chain in tables(rig, name):
        names = column_names(table)
        extra = Extra(rig, known, chain)
        for number, row in enumerate(table.rows, 1):
            cells = {key: cell.text for key, cell in zip(names, row.cells, strict=True)}
            words = {**cells, "row": str(number), **extra.words(cells, number)}
            for column, pattern in {**PART_A, **FURTHER}[name].get(known, {}).items():
                if column in cells:
                    checked += agrees(rig, pattern.format_map(words), cells[column])
    assert checked or (rig, name) in QUIET


QUIET = {
    ("examples/back-bedroom/board.rig", "midi-and-control-map"),
    ("examples/back-bedroom/board.rig", "preset-sheet"),
    *((rig, name) for rig in RIGS if "tide-line" in rig for name in SHEETS),
}
"""Sheets in which an example has no number."""


def agrees(rig: str, names: str, printed: str) -> int:
    """Holds a cell against its reason; 1 where it holds a number."""
    by_name = made(rig)[1].by_name
    found = [by_name[name] for name in names.split("|") if name in by_name]
    if printed in UNKNOWN:
        assert all(reason.value in (NOT_KNOWN, "none") for reason in found[:1]) or "|" in names, (names, found)
        return 0
    if printed == "any":
        return 0
    assert found, f"no reason for {names} ({printed})"
    assert found[0].value == printed
    return 1


class Extra:
    """What a reason's name holds beside the cells of its row."""

    def __init__(self, rig: str, table: str, chain: int) -> None:
        self.table = table
        self.chain = chain
        sections = named_sections(made(rig)[0].get(Loading))
        self.sections = [name for name, each in sections if table != "responses" or each.from_pickup]
        self.seen: dict[str, int] = {}

    def words(self, cells: dict[str, str], number: int) -> dict[str, str]:
        """Further words for the row of that number."""
        found = {"chain": str(self.chain)}
        if self.table in ("sections", "responses"):
            found["section_name"] = self.sections[number - 1]
        if self.table == "levels":
            found["level_name"] = self._level(cells)
        if "lead" in cells:
            found["first_lead"] = cells["lead"].split(", ")[0]
            found["lead"] = cells["lead"].replace(" ", "-")
        if self.table == "programs" and cells["unit"] == "all":
            return found | {"unit": "all"}
        return found | ({"supply": "rig"} if cells.get("supply") == "all" else {})

    def _level(self, cells: dict[str, str]) -> str:
        base = cells["edge"].split(" → ")[0] if cells["lead"] == "no lead" else cells["lead"]
        count = self.seen[base] = self.seen.get(base, 0) + 1
        return f"{base}.level" if count == 1 else f"{base}.level-{count}"
