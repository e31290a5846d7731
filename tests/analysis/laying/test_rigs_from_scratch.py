"""Both worked rigs with nothing stated but the deck and hints: no error, and less audio cable than in the hand layout."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from cases import READER, ROOT

from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.compile import Compiled, compile_rig
from rigc.diagnostics.diagnostic import Level
from rigc.files.disk import Disk

HINTS = {
    "back-bedroom": "",
    "long-haul": "  teeter within reach of right foot\n  signalbox row front\n  echomill row rear\n",
}


def from_scratch(name: str, tmp_path: Path, effort: int | None = None) -> Compiled:
    text = (ROOT / "examples" / name / "board.rig").read_text("utf-8")
    bare = re.sub(r"\nplace \{.*?\n\}\n", f"\nplace {{\n{HINTS[name]}}}\n" if HINTS[name] else "\n", text, flags=re.S)
    assert bare != text
    (tmp_path / name).mkdir()
    (tmp_path / "bench").mkdir()
    for stock in (ROOT / "examples/bench").glob("*.rig"):
        (tmp_path / "bench" / stock.name).write_bytes(stock.read_bytes())
    rig = tmp_path / name / "board.rig"
    rig.write_text(bare, "utf-8")
    disk = Disk(rig, root=tmp_path)
    return compile_rig(disk, disk.name, READER, effort=effort)


@pytest.mark.slow
@pytest.mark.parametrize(("name", "by_hand_mm"), [("back-bedroom", 1200), ("long-haul", 17_480)])
def test_no_error_and_no_longer_than_by_hand(name: str, by_hand_mm: int, tmp_path: Path) -> None:
    made = from_scratch(name, tmp_path)
    assert made.results is not None
    assert [each.message for each in made.findings if each.level is Level.ERROR] == []
    assert all(place.chosen for place in made.results.rig.places.values())
    audio = made.results.get(CableLengths).totals["audio"]
    assert not audio.unrouted
    assert 0 < audio.finished <= 10 * by_hand_mm


def test_without_effort_what_finds_no_room_is_told_with_what_it_lacks(tmp_path: Path) -> None:
    made = from_scratch("long-haul", tmp_path, effort=0)
    lacking = [each for each in made.findings if "there is no room for" in each.message]
    assert lacking
    assert made.results is not None
    for each in lacking:
        assert each.kind.name == "bodies-overlap" and each.numbers[0].value > 0
        assert each.subject[0] not in made.results.rig.places
