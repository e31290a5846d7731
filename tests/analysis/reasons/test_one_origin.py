"""No figure is reckoned a second time: where one is bent as it is made, its reason and each cell that shows it are bent alike."""

from __future__ import annotations

import re
from collections.abc import Iterator

import cases
import pytest
import test_sheet_columns as columns
from test_sheet_columns import COLUMNS, agrees, cells_of

from rigc.analysis.reasoning import told
from rigc.traced import figure
from rigc.traced.figure import Figure

pytestmark = pytest.mark.usefixtures("names_anywhere")

RIGS = ("examples/back-bedroom/board.rig", "examples/harbour-keys/board.rig")
PARTS = 4
NUMBER = re.compile(r"−?[\d.]*[1-9][\d.]*")
KINDS = ("width",)
"""What tells one kind from another: another width is another strip."""


@pytest.fixture(autouse=True)
def fresh() -> Iterator[None]:
    """Nothing bent is left for another test."""
    yield
    forget()


def forget() -> None:
    cases.forget()
    columns.made.cache_clear()
    columns.sheets.cache_clear()


def fields(rig: str) -> tuple[str, ...]:
    """The kinds of figures of the rig that those before it lack, by the last part of their names."""
    found = told(columns.made(rig)[0]).values()
    seen = {field for other in RIGS[: RIGS.index(rig)] for field in fields(other)}
    return tuple(sorted({each.name.rpartition(".")[2] for each in found if isinstance(each, Figure)} - {*KINDS} - seen))


def bent(value: float) -> float:
    """Times a whole number, so that lengths stay whole tenths; large where a rounded text would else not show it."""
    return value * (8 if abs(value) < 1 else 2)


def printed(rig: str) -> dict[tuple[str, str], str]:
    """Each cell by its table and the name of its figure, once all were held against their reasons."""
    known = columns.made(rig)[1].by_name
    cells = {}
    for table in COLUMNS:
        for names, text in cells_of(rig, table):
            agrees(rig, names, text)
            cells[table, next((name for name in names.split("|") if name in known), names)] = text
    return cells


@pytest.mark.parametrize("rig", RIGS)
@pytest.mark.parametrize("part", range(PARTS))
def test_what_is_bent_is_told_bent_everywhere(part: int, rig: str, monkeypatch: pytest.MonkeyPatch) -> None:
    before, unmoved = printed(rig), []
    for field in fields(rig)[part::PARTS]:
        monkeypatch.setattr(
            figure,
            "bent",
            lambda name, value, field=field: bent(value) if name.rpartition(".")[2] == field else value,
        )
        forget()
        try:
            now = printed(rig)
        except AssertionError as wrong:
            unmoved.append(f"{field}: {str(wrong).splitlines()[0]}")
            continue
        own = [key for key, text in before.items() if key[1].rpartition(".")[2] == field and NUMBER.fullmatch(text)]
        unmoved += [f"{field}: {key} stays {before[key]}" for key in own if now.get(key) == before[key]]
    monkeypatch.undo()
    assert "\n".join(unmoved) == ""
