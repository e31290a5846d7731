"""`rigc new`: a rig to start from, which has no faults, and never one over another."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import READER

from rigc.cli import main
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Level
from rigc.edit.starter import starter
from rigc.files.disk import Disk


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "rig-root").touch()
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_what_it_writes_is_good_and_small(folder: Path) -> None:
    """No error and no remark; it warns of nothing but the polarities, which must be looked at before anything is plugged in."""
    (folder / "board.rig").write_text(starter("two-step", "Two Step", "2026-03-02", "board.rig"), "utf-8")
    disk = Disk(folder / "board.rig")
    made = compile_rig(disk, disk.name, READER)
    told = [finding for finding in made.findings if finding.level is not Level.CANT_CHECK]
    assert {finding.level for finding in told} <= {Level.WARNING}
    assert [finding.message for finding in told if "is centre-negative is assumed" not in finding.message] == []
    assert made.results is not None


@pytest.mark.parametrize(
    ("arguments", "file", "rig"),
    [
        ([], "board.rig", "rig my-board "),
        (["two-step"], "two-step/board.rig", 'rig two-step "Two Step" {'),
        (["bench/Nº 3 spare.rig"], "bench/Nº 3 spare.rig", "rig n-3-spare "),
        (["44.rig"], "44.rig", "rig my-board "),
    ],
)
def test_where_it_writes(
    folder: Path, capfd: pytest.CaptureFixture[str], arguments: list[str], file: str, rig: str
) -> None:
    assert main(["new", *arguments]) == 0
    assert rig in (folder / file).read_text("utf-8")
    assert capfd.readouterr().err == f"wrote {file}; next: rigc check {file}\n"


def test_never_over_anything(folder: Path, capfd: pytest.CaptureFixture[str]) -> None:
    (folder / "board.rig").write_text("mine")
    (folder / "gone").mkdir()
    (folder / "gone" / "board.rig").symlink_to(folder / "nowhere.rig")
    assert main(["new"]) == 2
    assert capfd.readouterr().err == "rigc: 'board.rig' is there already; nothing was written\n"
    assert main(["new", "gone"]) == 2
    assert (folder / "board.rig").read_text() == "mine"
    assert not (folder / "nowhere.rig").exists()
