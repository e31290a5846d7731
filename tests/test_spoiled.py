"""Rigs with words gone, twice, exchanged or absurd, through every command: each answers, and none fails."""

from __future__ import annotations

import random
import re
from pathlib import Path
from shutil import copytree

import pytest
from cases import ROOT
from spoiled import spoiled

from rigc.cli import main

BOARDS = ("back-bedroom", "tide-line", "harbour-keys", "long-haul")
_NO_VALUE = re.compile(r"(?<![\w-])(?:nan|inf|None|Traceback)(?![\w-])|<[a-z]+ ?[a-z.]* at 0x")


def no_values(printed: str, text: str) -> list[str]:
    """What a command printed that is no value, and that the rig's text does not hold itself."""
    return [found for found in _NO_VALUE.findall(printed) if found not in text]


def commands(good: Path, bad: Path, folder: Path, dice: random.Random) -> list[list[str]]:
    """What is done with a spoiled rig: the check, and one of the others."""
    names = re.findall(r"(?m)^(?:unit|amp|supply|instrument|deck) ([a-z][\w-]*)", good.read_text("utf-8"))
    sheet = dice.choice(("wiring-sheet", "power-table", "cable-list", "level-table", "loading-table", "test-record"))
    others = [
        ["build", "-o", str(folder / "built"), "--draft", str(bad)],
        ["show", sheet, str(bad), "--to", dice.choice(("text", "md", "csv", "json"))],
        ["why", f"{dice.choice((*names, 'A1', 'A2', 'D1'))}", str(bad), "--deep"],
        ["diff", str(good), str(bad), "--all"],
        ["diff", str(bad), str(good)],
        ["mend", "--diff", str(bad)],
        ["fmt", "--diff", str(bad)],
        ["pin", "--diff", str(bad)],
        ["swap", dice.choice(names), dice.choice(names), str(bad)],
    ]
    return [["check", str(bad)], dice.choice(others)]


def run(board: str, seed: int, folder: Path) -> list[tuple[list[str], int]]:
    """Each command with its exit code."""
    (folder / "rig-root").touch()
    for name in (board, "bench"):
        copytree(ROOT / "examples" / name, folder / name, ignore=lambda _, names: {*names} & {"documents"})
    good, bad = folder / board / "good.rig", folder / board / "bad.rig"
    text = (folder / board / "board.rig").read_text("utf-8")
    good.write_text(text, "utf-8")
    bad.write_bytes(spoiled(text, seed).encode("utf-8", "surrogatepass"))
    return [(words, main(words)) for words in commands(good, bad, folder, random.Random(seed))]


@pytest.mark.parametrize("board", BOARDS)
@pytest.mark.parametrize("seed", [*range(5), *(pytest.param(seed, marks=pytest.mark.long) for seed in range(5, 12))])
def test_no_command_fails(
    board: str, seed: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    monkeypatch.setenv("RIGC_DEBUG", "1")
    codes = run(board, seed, tmp_path)
    out, err = capfd.readouterr()
    assert not [words for words, code in codes if code not in (0, 1, 2)], err
    assert not no_values(out + err, (tmp_path / board / "bad.rig").read_text("utf-8", "replace"))
