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
FACTORS = (2, 3, 5, 7)
"""So many kinds are bent at once, each by a number of its own, so that no two outweigh each other."""
CHAINED = ("peak",)
"""Each rests on the one before it along the chain, so that they grow by a power of the factor: they are bent by the least."""
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


def bent(value: float, factor: int) -> float:
    """Times a whole number, so that lengths stay whole tenths; large where a rounded text would else not show it."""
    return value * factor * (4 if abs(value) < 1 else 1)


def groups(rig: str) -> Iterator[dict[str, int]]:
    """The kinds that are bent at once, each with its factor; neighbours, which often rest on each other, in different groups."""
    found = sorted(fields(rig), key=lambda field: field not in CHAINED)
    count = -(-len(found) // len(FACTORS))
    return (dict(zip(found[first::count], FACTORS, strict=False)) for first in range(count))


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
def test_what_is_bent_is_told_bent_everywhere(rig: str, monkeypatch: pytest.MonkeyPatch) -> None:
    before, unmoved = printed(rig), []
    for factors in groups(rig):

        def bend(name: str, value: float, factors: dict[str, int] = factors) -> float:
            factor = factors.get(name.rpartition(".")[2])
            return value if factor is None else bent(value, factor)

        monkeypatch.setattr(figure, "bent", bend)
        forget()
        try:
            now = printed(rig)
        except AssertionError as wrong:
            unmoved.append(f"{', '.join(factors)}: {str(wrong).splitlines()[0]}")
            continue
        own = [key for key, text in before.items() if key[1].rpartition(".")[2] in factors and NUMBER.fullmatch(text)]
        unmoved += [f"{key} stays {before[key]}" for key in own if now.get(key) == before[key]]
    monkeypatch.undo()
    assert "\n".join(unmoved) == ""
