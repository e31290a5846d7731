"""`rigc git` in a repository of its own: what it sets, what it keeps, what git then shows, and the way back."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from edit.conftest import Command

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="needs git")

RIG = "language 1\n\nunit marl {\n  draws 8 mA  # measured\n  needs 9 V dc\n  digital\n  delay\n  mass 400 g\n}\n"


@pytest.fixture(autouse=True)
def alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No settings of the user's own, and `rigc` as a program that git can call."""
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(tmp_path / "none"))
    monkeypatch.setenv("GIT_CONFIG_NOSYSTEM", "1")
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    program = tmp_path / "bin" / "rigc"
    program.parent.mkdir()
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m rigc "$@"\n')
    program.chmod(0o755)
    root = Path(__file__).parent.parent.parent
    monkeypatch.setenv("PYTHONPATH", str(root))
    monkeypatch.setenv("PATH", f"{program.parent}{os.pathsep}{os.environ['PATH']}")


def git(*arguments: str) -> str:
    """What git prints."""
    who = ("-c", "user.name=R.K.", "-c", "user.email=rk@example.invalid", "-c", "core.quotepath=false")
    run = subprocess.run(["git", *who, *arguments], capture_output=True, check=True)
    return run.stdout.decode()


def state() -> tuple[str, str | None]:
    """The repository's settings and attributes."""
    attributes = Path(".gitattributes")
    return git("config", "--local", "--list"), attributes.read_text() if attributes.exists() else None


def test_set_up_and_undone(run: Command) -> None:
    git("init", "-q")
    before = state()
    assert run("git", "show").code == 1
    assert run("git", "setup").code == 0
    assert Path(".gitattributes").read_text() == "*.rig diff=rig\n"
    assert "diff.tool" not in state()[0] and "diff.external" not in state()[0]
    code, out, err = run("git", "show")
    assert (code, err) == (0, "") and out.count("(set)\n") == 5
    again = state()
    assert run("git", "setup").code == 0
    assert state() == again
    assert run("git", "undo").code == 0
    assert state() == before
    assert run("git", "undo") == (0, "", "")


def test_what_is_there_is_kept(run: Command) -> None:
    git("init", "-q")
    Path(".gitattributes").write_text("*.md text\n*.rig diff=mine")
    git("config", "diff.rig.textconv", "mine")
    assert "kept *.rig diff=mine\n" in run("git", "setup").err
    assert Path(".gitattributes").read_text() == "*.md text\n*.rig diff=mine"
    assert git("config", "diff.rig.textconv") == "mine\n"
    assert "(otherwise: mine)" in run("git", "show").out
    run("git", "undo")
    assert git("config", "diff.rig.textconv") == "mine\n"
    assert Path(".gitattributes").read_text() == "*.md text\n*.rig diff=mine"


def test_other_attributes_stay(run: Command) -> None:
    git("init", "-q")
    Path(".gitattributes").write_text("*.md text")
    run("git", "setup")
    assert Path(".gitattributes").read_text() == "*.md text\n*.rig diff=rig\n"
    run("git", "undo")
    assert Path(".gitattributes").read_text() == "*.md text\n"


def test_what_git_shows(run: Command) -> None:
    """A changed line under the head of its block; spacing alone is no difference; other files as ever. From a folder below,
    with a space and letters beyond ASCII in the path, in a work tree that holds other changes."""
    git("init", "-q")
    rig, other = Path("größe 2") / "böard.rig", Path("a.txt")
    rig.parent.mkdir()
    rig.write_text(RIG)
    other.write_text("a\n")
    git("add", "-A")
    git("commit", "-q", "-m", "first")
    Path("new.txt").write_text("not added\n")
    run("git", "setup")
    rig.write_text(RIG.replace("draws 8 mA  #", "draws    8 mA #"))
    assert "draws" not in git("diff")
    rig.write_text(RIG.replace("mass 400 g", "mass   410 g"))
    other.write_text("b\n")
    shown = git("diff")
    assert "@@ unit marl\n" in shown and "-  mass 400 g\n+  mass 410 g\n" in shown and "-a\n+b\n" in shown
    told = git("difftool", "-y", "-t", "rig", "--", str(rig))
    assert told == f"{rig.as_posix()}\nunit marl\n  - mass 400 g\n  + mass 410 g\n\n"
    git("rm", "-q", "--cached", str(rig))
    assert "-unit marl {" in git("diff", "--cached")
    assert git("status", "--short", "new.txt") == "?? new.txt\n"


def test_a_rig_that_cannot_be_read_whole_is_shown_as_it_is(run: Command) -> None:
    Path("a.rig").write_text("language   1\nnonsense\n")
    Path("b.rig").write_text("language   1\n")
    assert run("git", "text", "a.rig") == (0, "language   1\nnonsense\n", "")
    assert run("git", "text", "b.rig") == (0, "language 1\n", "")
    assert "-nonsense\n" in run("git", "compare", "a.rig", "b.rig", "x.rig").out
    assert run("git", "compare", os.devnull, "b.rig", "x.rig").out == "x.rig\n+ language 1\n\n"
    assert "the statements are the same" in run("git", "compare", "b.rig", "b.rig").out


def test_without_a_repository_or_git(run: Command, monkeypatch: pytest.MonkeyPatch) -> None:
    for command in ("setup", "show", "undo"):
        code, out, err = run("git", command)
        assert (code, out) == (2, "") and err.startswith("rigc: git says: not a git repository")
    monkeypatch.setenv("PATH", "")
    assert run("git", "setup") == (2, "", "rigc: there is no program 'git' here\n")


def test_the_hook_names_commands_that_there_are(run: Command) -> None:
    code, out, _ = run("git", "hook")
    entries = [line.split()[1:] for line in out.splitlines() if line.strip().startswith("entry:")]
    assert code == 0 and entries
    for _, *words in entries:
        assert run(*words, "--help").code == 0
