"""`rigc build` into a folder that holds another revision or another rig."""

from __future__ import annotations

from pathlib import Path

import pytest

from rigc.cli import main

TOY = 'language 1\n\nrig {name} "Toy" {{\n  revision {letter} 2026-03-02\n}}\n'


@pytest.fixture
def board(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the documents of revision A."""
    (tmp_path / "rig-root").touch()
    monkeypatch.chdir(tmp_path)
    board = tmp_path / "board.rig"
    board.write_text(TOY.format(name="toy", letter="A"))
    assert main(["-q", "build", "--separate", "--to", "md"]) == 0
    return board


def _revision(folder: Path) -> str:
    return (folder / "documents" / "cable-list.md").read_text("utf-8").partition("- revision: ")[2][:1]


def test_the_same_revision_again(board: Path) -> None:
    board.write_text(f'{board.read_text()}\nnote "spare fuses are in the lid"\n')
    assert main(["-q", "build", "--separate"]) == 0


@pytest.mark.parametrize("form", ["md", "html"])
def test_another_revision_is_refused(board: Path, capfd: pytest.CaptureFixture[str], form: str) -> None:
    assert main(["-q", "build", "--separate", "--replace"]) == 0
    board.write_text(TOY.format(name="toy", letter="B"))
    capfd.readouterr()
    assert main(["-q", "build", "--separate", "--to", form]) == 2
    assert "is of revision A of 'toy'; nothing was written (--replace writes over it" in capfd.readouterr().err
    assert _revision(board.parent) == "A"
    assert main(["-q", "build", "--separate", "-o", "new-documents", "--to", form]) == 0


def test_another_rig_is_refused(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    board.write_text(TOY.format(name="other", letter="A"))
    assert main(["-q", "build", "--separate"]) == 2
    assert "of revision A of 'toy'" in capfd.readouterr().err


def test_it_is_written_over_when_told_and_the_rest_is_named(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    board.write_text(TOY.format(name="toy", letter="B"))
    assert main(["-q", "build", "--separate", "--replace", "--to", "md", "--sheet", "cable-list"]) == 0
    assert _revision(board.parent) == "B"
    assert "documents of revision A of 'toy' are still in documents\n" in capfd.readouterr().err


def test_one_file_minds_only_itself(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["-q", "build", "-o", "all.html"]) == 0
    board.write_text(TOY.format(name="toy", letter="B"))
    assert main(["-q", "build", "-o", "all.html"]) == 2
    assert "'all.html' is of revision A of 'toy'" in capfd.readouterr().err
    assert main(["-q", "build", "-o", "other.html"]) == 0


def test_a_sheet_that_the_rig_no_longer_has_is_named(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    documents = board.parent / "documents"
    old = (documents / "cable-list.md").read_text()
    (documents / "customs-list.md").write_text(old)
    (documents / "notes.md").write_text("ours\n")
    capfd.readouterr()
    assert main(["-q", "build", "--separate"]) == 0
    left = "of an earlier build, and not made now: 'customs-list.md' in documents; delete what the rig no longer has\n"
    assert left in capfd.readouterr().err
    assert main(["-q", "build", "--sheet", "cable-list"]) == 0
    assert "earlier build" not in capfd.readouterr().err
