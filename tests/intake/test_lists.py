"""Three messy lists of gear: what came in, what was asked, and that nothing of them is lost."""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest
from cases import ExpectedByName
from syrupy.assertion import SnapshotAssertion

from intake.made_lists import bench_ods, fly_rig_xlsx
from rigc.cli import main
from rigc.edit.canonical import canonical
from rigc.files.intake.books import book
from rigc.files.reader import CachedReader
from rigc.source import Source

CSV = Path(__file__).parent / "lists" / "spring-tour.csv"
LISTS = {"spring-tour.csv": CSV.read_bytes, "fly-rig.xlsx": fly_rig_xlsx, "bench.ods": bench_ods}
HEADS = {"spring-tour.csv": (3, 4), "fly-rig.xlsx": (3, 4, 11, 12), "bench.ods": (1,)}
"""The rows of headings that were understood."""
REWORDED = ("manual", "guess")
"""What the language calls `leaflet` and `assumed`."""
NOON = 1_772_452_800
"""2026-03-02 at 12:00 UTC."""


@pytest.mark.parametrize("name", LISTS)
def test_what_came_in_and_what_was_asked(
    name: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capfd: pytest.CaptureFixture[str],
    snapshot: SnapshotAssertion,
) -> None:
    monkeypatch.chdir(tmp_path)
    Path(name).write_bytes(LISTS[name]())
    os.utime(name, (NOON, NOON))
    assert main(["intake", name]) == 1
    text, told = capfd.readouterr()
    assert f"{text}\n{told}" == snapshot(extension_class=ExpectedByName)
    reader = CachedReader()
    parsed = reader.parse(Source("units.rig", text))
    assert parsed.findings == ()
    assert canonical(parsed.file) == text
    sheets = book(name, LISTS[name](), "2026-03-02").sheets
    first = sheets[0]
    for sheet in sheets:
        rows = (row for row in sheet.rows if row.number not in HEADS[name] or sheet is not first)
        for cell in (cell for row in rows for cell in row.cells.values() if cell.text not in REWORDED):
            assert kept(cell.text, text) and kept(cell.remark, text), f"{sheet.name} {cell.place}: {cell.text}"


def kept(said: str, text: str) -> bool:
    """Whether each word and number of a cell is in the source."""
    plain = text.replace("\\", "").lower()
    return all(each in plain for each in re.findall(r"[^\W\d_]+|\d+", said.lower()))
