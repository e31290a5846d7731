"""`rigc mend`: what is advised, done; several ways are listed and none is taken unasked."""

from __future__ import annotations

from pathlib import Path

import pytest

from rigc.cli import main

BEFORE = 'language 1\n\nrig toy "Toy" {\n  revision A 2026-03-02\n}\n'
USELESS = 'accept too-heavy on toy "as it is" by "R.K." until 2026-12-31\n'


@pytest.fixture
def board(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "rig-root").touch()
    monkeypatch.chdir(tmp_path)
    board = tmp_path / "board.rig"
    board.write_text(BEFORE + USELESS)
    return board


def test_a_mend_is_made_and_told(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["mend"]) == 0
    assert board.read_text() == BEFORE
    told = capfd.readouterr().err
    assert "board.rig:6: delete this line [useless-accept]\nwrote board.rig\n" in told
    assert main(["mend"]) == 0
    assert "nothing was mended" in capfd.readouterr().err


def test_a_diff_writes_nothing(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["mend", "--diff", "board.rig"]) == 0
    assert board.read_text() == BEFORE + USELESS
    assert f"-{USELESS}" in capfd.readouterr().out


def test_only_the_findings_of_one_rule(board: Path) -> None:
    assert main(["mend", "ended-accept", "board.rig"]) == 0
    assert board.read_text() == BEFORE + USELESS
    assert main(["mend", "useless-accept"]) == 0
    assert board.read_text() == BEFORE


def test_what_is_no_rule_and_no_file(board: Path, capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["mend", "usless-accept", board.name]) == 2
    assert "there is no rule 'usless-accept'; did you mean 'useless-accept'?" in capfd.readouterr().err
    assert main(["mend", "bord.rig"]) == 2
    assert main(["mend", "a", "b", "c"]) == 2


def test_standard_input_is_printed_mended(
    board: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    import io
    from types import SimpleNamespace

    monkeypatch.setattr("sys.stdin", SimpleNamespace(buffer=io.BytesIO(board.read_bytes())))
    assert main(["mend", "-"]) == 0
    assert capfd.readouterr().out == BEFORE


THREE = USELESS + USELESS.replace("heavy", "tall") + USELESS.replace("heavy", "warm")


def test_what_did_not_work_is_tried_once_more_when_nothing_else_is_left(
    board: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from rigc.diagnostics.diagnostic import Diagnostic
    from rigc.diagnostics.mend import Mend
    from rigc.proved import Bench, Tried

    tries: list[str] = []
    real = Bench.tried

    def tried(self: Bench, finding: Diagnostic, mend: Mend) -> Tried:
        word = next(word for word in ("heavy", "tall", "warm") if f"too-{word}" in finding.message)
        tries.append(word)
        return Tried({}, "would not change it") if word == "tall" else real(self, finding, mend)

    monkeypatch.setattr(Bench, "tried", tried)
    board.write_text(BEFORE + THREE)
    main(["mend"])
    assert board.read_text() == BEFORE + USELESS.replace("heavy", "tall")
    assert tries == ["heavy", "tall", "warm", "tall"]


def test_the_bound_is_told_when_it_is_reached(
    board: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    board.write_text(BEFORE + THREE)
    monkeypatch.setattr("rigc.cli.commands.mend.MOST_LINES", 18)  # 9 lines, with the empty last one: two trials
    main(["mend"])
    assert board.read_text().count("accept") == 1
    assert "2 mends were tried, as many as one run tries; run it again to go on" in capfd.readouterr().err
    main(["mend"])
    assert board.read_text() == BEFORE
