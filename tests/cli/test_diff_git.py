"""`rigc diff` of revisions in a git repository: what is read, from where, and what is refused, each in one line."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from rigc.cli import main

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="needs git")

UNIT = "unit marl {\n  input in ts\n  output out ts\n  needs 9 V dc\n  draws MA mA\n}\nunit tern like marl {\n}\n"
BOARD = 'language 1\nuse "units.rig"\nrig small {\n  revision A 2026-03-02\n}\nchain marl -> tern\n'


class Run:
    """What a command gave."""

    def __init__(self, code: int, out: str, err: str) -> None:
        self.code, self.out, self.err = code, out, err

    def refused(self, *parts: str) -> bool:
        """Whether it could not answer, said so in one line, and that line holds these parts."""
        return self.code == 2 and not self.out and self.err.count("\n") == 1 and all(part in self.err for part in parts)


@pytest.fixture(autouse=True)
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A repository with one commit, the current folder; no settings of the user's own."""
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(tmp_path / "none"))
    monkeypatch.setenv("GIT_CONFIG_NOSYSTEM", "1")
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    here = tmp_path / "rigs"
    here.mkdir()
    monkeypatch.chdir(here)
    git("init", "-q", "-b", "trunk")
    write("board.rig", BOARD)
    write("units.rig", UNIT.replace("MA", "8"))
    commit("first")
    yield here


def write(path: str, text: str) -> None:
    Path(path).parent.mkdir(parents=True, exist_ok=True)
    Path(path).write_text(text, "utf-8")


def git(*arguments: str) -> str:
    who = ("-c", "user.name=R.K.", "-c", "user.email=rk@example.invalid", "-c", "protocol.file.allow=always")
    return subprocess.run(["git", *who, *arguments], capture_output=True, check=True).stdout.decode()


def commit(text: str) -> None:
    git("add", "-A")
    git("commit", "-q", "-m", text)


def diff(capfdbinary: pytest.CaptureFixture[bytes], *arguments: str) -> Run:
    code = main(["diff", *arguments])
    out, err = capfdbinary.readouterr()
    return Run(code, out.decode(), err.decode())


Capture = pytest.CaptureFixture[bytes]


def test_what_a_rig_uses_is_read_from_the_same_revision(capfdbinary: Capture) -> None:
    write("units.rig", UNIT.replace("MA", "12"))
    found = diff(capfdbinary, "HEAD", "--", "board.rig")
    assert (found.code, found.err) == (0, "")
    assert "unit marl  draws  8 mA    12 mA" in found.out
    assert "facts were corrected" in found.out
    assert "(HEAD:board.rig)" in found.out
    assert "(board.rig)" in found.out


def test_the_index_stays_as_it_is(capfdbinary: Capture) -> None:
    write("units.rig", UNIT.replace("MA", "12"))
    os.utime("board.rig", (0, 0))  # git would refresh what it knows of this file, if it were let
    git("rm", "-q", "--cached", "board.rig")
    git("mv", "units.rig", "tools.rig")
    before = Path(".git/index").read_bytes()
    diff(capfdbinary, "HEAD", "--", "board.rig")
    diff(capfdbinary, "HEAD", "--", "tools.rig")
    assert Path(".git/index").read_bytes() == before


def test_two_revisions(capfdbinary: Capture) -> None:
    write("units.rig", UNIT.replace("MA", "12"))
    commit("second")
    write("units.rig", "no rig at all")
    for revisions in ("HEAD~1..HEAD", "HEAD~1.."):
        found = diff(capfdbinary, revisions, "--", "board.rig")
        assert found.code == 0 and "8 mA    12 mA" in found.out
        assert "(HEAD~1:board.rig)" in found.out and "(HEAD:board.rig)" in found.out


def test_a_merge_is_compared_with_either_parent(capfdbinary: Capture) -> None:
    git("checkout", "-q", "-b", "side")
    write("units.rig", UNIT.replace("MA", "12"))
    commit("side")
    git("checkout", "-q", "trunk")
    write("board.rig", BOARD.replace("revision A", "revision B"))
    commit("trunk")
    git("merge", "-q", "--no-edit", "side")
    first = diff(capfdbinary, "HEAD^1..HEAD", "--", "board.rig").out
    assert "draws" in first and "revision  A" not in first
    second = diff(capfdbinary, "HEAD^2..HEAD", "--", "board.rig").out
    assert "draws" not in second and "every page  revision  A       B" in second


def test_a_renamed_file_is_followed(capfdbinary: Capture) -> None:
    write("sub/units.rig", UNIT.replace("MA", "12"))
    git("mv", "board.rig", "sub/small.rig")
    for revisions in ("HEAD", "HEAD~1..HEAD"):
        found = diff(capfdbinary, revisions, "--", "sub/small.rig")
        assert found.code == 0 and "8 mA    12 mA" in found.out, found.err
        assert ":board.rig)" in found.out
        commit("moved") if revisions == "HEAD" else None
    assert ":sub/small.rig)" in diff(capfdbinary, "HEAD~1..HEAD", "--", "board.rig").out


def test_spaces_and_letters_of_all_kinds(capfdbinary: Capture) -> None:
    write("große Fahrt/Brücke * 1.rig", BOARD.replace("units.rig", "Gerät é.rig"))
    write("große Fahrt/Gerät é.rig", UNIT.replace("MA", "8"))
    commit("second")
    write("große Fahrt/Gerät é.rig", UNIT.replace("MA", "12"))
    found = diff(capfdbinary, "HEAD", "--", "große Fahrt/Brücke * 1.rig")
    assert found.code == 0 and "8 mA    12 mA" in found.out
    assert "(HEAD:große Fahrt/Brücke * 1.rig)" in found.out


def test_from_another_folder_and_with_the_generic_stock(capfdbinary: Capture, monkeypatch: pytest.MonkeyPatch) -> None:
    write(
        "deep/er/board.rig",
        BOARD.replace("units.rig", "../../units.rig").replace("rig small", 'use "stock/plugs.rig"\nrig small'),
    )
    commit("second")
    write("units.rig", UNIT.replace("MA", "12"))
    monkeypatch.chdir("deep")
    found = diff(capfdbinary, "HEAD", "--", "er/board.rig")
    assert found.code == 0 and "8 mA    12 mA" in found.out


def test_a_file_that_is_used_no_longer_or_not_yet(capfdbinary: Capture) -> None:
    Path("units.rig").unlink()
    found = diff(capfdbinary, "HEAD", "--", "board.rig")
    assert found.code == 2 and not found.out
    assert "cannot read 'units.rig'" in found.err
    assert found.err.endswith("rigc diff: 'board.rig' has errors in its names or quantities, so nothing was compared\n")
    commit("without")
    write("units.rig", UNIT.replace("MA", "12"))
    found = diff(capfdbinary, "HEAD", "--", "board.rig")
    assert (
        found.code == 2
        and "HEAD:board.rig:2:5: error: cannot read 'units.rig': there is no such file in HEAD" in found.err
    )
    assert found.err.endswith("'HEAD:board.rig' has errors in its names or quantities, so nothing was compared\n")


def test_a_rig_that_is_not_there(capfdbinary: Capture) -> None:
    write("new.rig", BOARD)
    found = diff(capfdbinary, "HEAD", "--", "new.rig")
    assert found.code == 2 and "HEAD:new.rig: error: cannot read 'new.rig': there is no such file in HEAD" in found.err
    found = diff(capfdbinary, "HEAD", "--", "nowhere/none.rig")
    assert found.code == 2 and not found.out


@pytest.mark.parametrize(
    "typed", ["nonsense", "--output=x", "-p", "HEAD:units.rig", " ", "HEAD..--output=x", "HEAD^{tree}"]
)
def test_what_is_no_revision(capfdbinary: Capture, typed: str) -> None:
    found = (
        diff(capfdbinary, "--", typed, "board.rig")
        if typed.startswith("-")
        else diff(capfdbinary, typed, "--", "board.rig")
    )
    assert found.code == 2 and not found.out and found.err.count("\n") == 1
    if not typed.startswith("-"):
        wanted = typed.removeprefix("HEAD..") if typed.startswith("HEAD..") else typed
        assert found.refused(f"there is no revision '{wanted}' here; git log --oneline lists those that there are")
    assert not Path("x").exists()


def test_three_dots(capfdbinary: Capture) -> None:
    assert diff(capfdbinary, "HEAD...HEAD", "--", "board.rig").refused("'HEAD...HEAD' has three dots; write two")


def test_a_shallow_clone(capfdbinary: Capture, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write("units.rig", UNIT.replace("MA", "12"))
    commit("second")
    git("clone", "-q", "--depth", "1", f"file://{Path.cwd()}", str(tmp_path / "shallow"))
    monkeypatch.chdir(tmp_path / "shallow")
    assert diff(capfdbinary, "HEAD~1", "--", "board.rig").refused("shallow clone; git fetch --unshallow brings")
    assert diff(capfdbinary, "HEAD", "--", "board.rig").code == 0


def test_without_git(capfdbinary: Capture, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    assert diff(capfdbinary, "HEAD", "--", "board.rig").refused("no program 'git' here; name two files instead")


def test_without_a_repository(capfdbinary: Capture, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    monkeypatch.chdir(outside)
    write("board.rig", BOARD)
    assert diff(capfdbinary, "HEAD", "--", "board.rig").refused("is in no git repository", "name two files instead")


def test_a_link_is_not_followed(capfdbinary: Capture) -> None:
    write("really.rig", UNIT.replace("MA", "8"))
    Path("units.rig").unlink()
    Path("units.rig").symlink_to("really.rig")
    Path("linked").symlink_to(".")
    write("far.rig", BOARD.replace("units.rig", "linked/really.rig"))
    commit("links")
    for name in ("board.rig", "far.rig"):
        found = diff(capfdbinary, "HEAD", "--", name)
        assert found.code == 2 and "is a link in HEAD, or lies behind one" in found.err
        assert "do: name the file itself" in found.err


def test_a_repository_inside(capfdbinary: Capture, tmp_path: Path) -> None:
    other = tmp_path / "other"
    git("init", "-q", "-b", "trunk", str(other))
    (other / "units.rig").write_text(UNIT.replace("MA", "8"), "utf-8")
    git("-C", str(other), "add", "-A")
    git("-C", str(other), "commit", "-q", "-m", "units")
    git("submodule", "--quiet", "add", str(other), "shared")
    write("board.rig", BOARD.replace("units.rig", "shared/units.rig"))
    commit("submodule")
    found = diff(capfdbinary, "HEAD", "--", "board.rig")
    assert found.code == 2
    assert "'shared/units.rig' lies in 'shared', another repository that HEAD does not hold" in found.err


def test_nothing_from_outside_the_project(capfdbinary: Capture) -> None:
    write("sub/rig-root", "")
    write("sub/board.rig", BOARD.replace("units.rig", "../units.rig"))
    write("out.rig", BOARD.replace("units.rig", "../units.rig"))
    commit("outside")
    found = diff(capfdbinary, "HEAD", "--", "sub/board.rig")
    assert found.code == 2 and "'../units.rig' lies outside the project" in found.err
    assert diff(capfdbinary, "HEAD", "--root", ".", "--", "sub/board.rig").code == 0
    assert diff(capfdbinary, "HEAD", "--root", "..", "--", "sub/board.rig").code == 0
    found = diff(capfdbinary, "HEAD", "--", "out.rig")
    assert found.code == 2 and "'../units.rig' lies outside the project" in found.err


def test_a_revision_in_front_of_nothing(capfdbinary: Capture) -> None:
    found = diff(capfdbinary, "HEAD", "board.rig")
    assert found.refused("there is no file 'HEAD'; a revision stands before --: HEAD -- board.rig")
    assert diff(capfdbinary, "board.rig").refused("name two rigs, OLD NEW, or a revision and a rig")
    assert diff(capfdbinary, "HEAD", "--", "a.rig", "b.rig").refused("behind -- stands one rig")
    assert diff(capfdbinary, "HEAD", "--", "board.rig", "--brief").refused("'--brief' stands behind --")
