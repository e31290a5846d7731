"""Every number of the sheets has a reason, and the reason gives the very text that the sheet prints."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from cases import ROOT, results
from reason_columns import FURTHER, PART_A

from rigc.analysis.reasoning import Reasoning
from rigc.analysis.results import Results
from rigc.analysis.signal.loading.loading import Loading
from rigc.output.column_names import column_names
from rigc.reports.content import Sheet, Table
from rigc.reports.folder import all_sheets
from rigc.reports.signal.loading.words import state_names, way
from rigc.traced.reason import NOT_KNOWN

pytestmark = pytest.mark.usefixtures("names_anywhere")

RIGS = [
    path.relative_to(ROOT).as_posix()
    for path in sorted((*ROOT.glob("examples/*/board.rig"), *ROOT.glob("tests/rigs/**/*.rig")))
]
SHEETS = (
    "cable-list", "crossing-list", "cut-list", "label-sheet", "mass-and-balance", "mounting-strips", "power-table", "pull-list", "wiring-sheet",
)  # fmt: skip
COLUMNS: dict[str, dict[str, str]] = {**PART_A, **FURTHER}
UNKNOWN = ("", "?", "any")
"""What a sheet prints where a figure is not known, or where there is none; a panel takes any level."""

LIMITS = {"one lifter": "lift", "one airline piece": "airline", "the case": "case"}
SUMS = {"sum": "rig.mass", "sum with the case": "rig.with-case", "sum with all cases": "rig.with-case"}


@cache
def made(rig: str) -> tuple[Results, Reasoning]:
    """The results and reasons of an example."""
    found = results(ROOT / Path(rig))
    return found, Reasoning(found)


@cache
def sheets(rig: str) -> tuple[Sheet, ...]:
    """All sheets of an example that have something to say."""
    found = (made(rig)[0].call(maker) for maker in all_sheets())
    return tuple(sheet for sheet in found if isinstance(sheet, Sheet))


def tables(rig: str) -> Iterator[tuple[str, str, Table, int]]:
    """The tables of all sheets: the sheet, the name by which this test knows the table, and the number of a chain's."""
    for sheet in sheets(rig):
        chains = 0
        for block in sheet.blocks:
            if isinstance(block, Table):
                chains += block.name.startswith("signal_")
                yield sheet.name, "signal" if block.name.startswith("signal_") else block.name, block, chains


@pytest.mark.parametrize("rig", RIGS)
def test_every_number_column_has_a_reason(rig: str) -> None:
    for sheet, known, table, _ in tables(rig):
        columns = {key for key, column in zip(column_names(table), table.columns, strict=True) if column.number}
        if sheet in SHEETS:
            assert columns <= COLUMNS.get(known, {}).keys(), f"{sheet}: {table.name}"


@pytest.mark.parametrize("name", COLUMNS)
def test_the_reason_gives_the_text_of_the_cell(name: str) -> None:
    numbers = [agrees(rig, *each) for rig in RIGS for each in cells_of(rig, name)]
    assert any(numbers)


def cells_of(rig: str, name: str) -> Iterator[tuple[str, str]]:
    """Each number of a table: the name of its reason, and what is printed. A cell on several leads holds one for each."""
    for table, chain in ((table, chain) for _, known, table, chain in tables(rig) if known == name):
        names = column_names(table)
        extra = Extra(rig, name, chain)
        for number, row in enumerate(table.rows, 1):
            cells = {key: cell.text for key, cell in zip(names, row.cells, strict=True)}
            partly = {key for key, cell in zip(names, row.cells, strict=True) if cell.mark == "at least"}
            words = {**cells, "row": str(number), **extra.words(cells, number)}
            for column, pattern in COLUMNS[name].items():
                if column == "lead_drop_percent":
                    for lead, printed in zip(cells["lead"].split(", "), cells[column].split(", "), strict=True):
                        yield pattern.format(lead=lead), printed
                elif name == "crossings":  # plain crossings of one lead share a row
                    for other in cells["lead_2"].split(", "):
                        yield pattern.format_map({**words, "lead_2": other}), cells[column]
                elif column in cells:
                    # a sum that is not known prints what is certain of it
                    known = "-known" if column in partly and name != "limits" else ""
                    yield pattern.format_map(words) + known, cells[column]


def agrees(rig: str, names: str, printed: str) -> bool:
    """Holds a cell against its reason: whether it holds a number."""
    by_name = made(rig)[1].by_name
    found = [by_name[name] for name in names.split("|") if name in by_name]
    if printed in UNKNOWN:
        assert all(reason.value in (NOT_KNOWN, "none") for reason in found[:1]) or "|" in names, (names, found)
        return False
    assert found, f"no reason for {names} ({printed}) of {rig}"
    assert found[0].value == printed, f"{names} of {rig}"
    return True


class Extra:
    """What a reason's name holds beside the cells of its row."""

    def __init__(self, rig: str, table: str, chain: int) -> None:
        self.table = table
        self.chain = chain
        loading = made(rig)[0].get(Loading)
        self.pickups = [each.name for each in loading.sections if each.from_pickup]
        self.sections = {(way(each), state_names(loading, (each,))): each.name for each in loading.sections}
        self.seen: dict[str, int] = {}

    def words(self, cells: dict[str, str], number: int) -> dict[str, str]:
        """Further words for the row of that number."""
        found = {"chain": str(self.chain)}
        if self.table == "sections":
            found["section_name"] = self.sections[cells["section"], cells["state"]]
        if self.table in ("pickups", "responses"):
            found["section_name"] = self.pickups[number - 1]
        if self.table == "levels":
            found["level_name"] = self._level(cells)
        if self.table == "limits":
            limit, _, case = cells["limit"].partition(": ")
            found["limit_name"] = f"{case or 'rig'}.{LIMITS[limit]}"
        if self.table == "loads":
            bare = cells["case"] == "no case"
            found["load_name"] = cells["decks"].split(", ")[0] if bare else cells["case"]
            found["load_sum"] = "board" if bare else "together"
        if self.table == "pull-list":
            found["pull_name"] = cells["item"].replace(" ", "-")
        if self.table == "items":
            found["mass_name"] = SUMS.get(cells["item"], f"{cells['item'].removesuffix(' leads')}.mass")
        if "lead" in cells:
            found["lead"] = cells["lead"].replace(" ", "-")
        return found | ({"supply": "rig"} if cells.get("supply") == "all" else {})

    def _level(self, cells: dict[str, str]) -> str:
        base = cells["edge"].split(" → ")[0] if cells["lead"] == "no lead" else cells["lead"]
        count = self.seen[base] = self.seen.get(base, 0) + 1
        return f"{base}.level" if count == 1 else f"{base}.level-{count}"
