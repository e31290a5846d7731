"""`rigc build` of a whole shop: several at once, what hangs on what, and building again as files are saved."""

from __future__ import annotations

import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from cases import ROOT

from cli.conftest import Rigc
from rigc.files.marks import STILL_S, marks, next_change

BENCH = 'unit tern "overdrive" {\n  mass 400 g\n}\n'
RIG = 'language 1\n\nuse "../units.rig"\n\nrig {0} "A {0}" {{\n  revision A 2026-03-02\n}}\n'


def shop(folder: Path, count: int = 3) -> None:
    """So many rigs, each in a folder of its own, that use one file."""
    (folder / "rig-root").touch()
    (folder / "units.rig").write_text(f"language 1\n\n{BENCH}")
    for number in range(count):
        (folder / f"r{number}").mkdir()
        (folder / f"r{number}/board.rig").write_text(RIG.format(f"r{number}"))


def documents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("documents/*")}


def test_several_at_once_are_the_same(rigc: Rigc, here: Path) -> None:
    """Findings in the order of the rigs, documents to the byte."""
    for name in "abcde":
        (here / name).mkdir()
        (here / name / "x.rig").write_text(f"rig {name}\nwarning of {name}\n")
    one = rigc("build", ".", "--findings", "short", "--to", "html")
    alone = documents(here)
    for path in here.rglob("documents"):
        shutil.rmtree(path)
    two = rigc("build", ".", "--findings", "short", "--to", "html", "--jobs", "3")
    assert one == two
    assert one.code == 0
    assert documents(here) == alone
    assert len(alone) == 5


def test_all_or_none_at_once(rigc: Rigc, here: Path) -> None:
    for name, text in {"a": "fine", "b": "error bad", "c": "fine"}.items():
        (here / name).mkdir()
        (here / name / "x.rig").write_text(f"rig {name}\n{text}\n")
    for jobs in ("1", "2"):
        code, _, err = rigc("build", ".", "--jobs", jobs)
        assert code == 1
        assert "nothing was written; --draft writes in spite of errors\n" in err
        assert documents(here) == {}


def test_a_bug_in_a_worker_is_told(rigc: Rigc, here: Path) -> None:
    for name in "ab":
        (here / f"{name}.rig").write_text("rig x\ncrash\n")
    assert rigc("build", ".", "--jobs", "2").code == 70


def built(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "rigc", "build", *arguments]
    return subprocess.run(
        command, cwd=folder, capture_output=True, text=True, env={**_environment(), "PYTHONPATH": str(ROOT)}
    )


def _environment() -> dict[str, str]:
    import os

    return dict(os.environ)


def test_what_hangs_on_what(tmp_path: Path) -> None:
    """A rule for each rig, with what it uses; what ships is left out, and no name ends its rule."""
    shop(tmp_path, 1)
    odd = tmp_path / "my # $ rigs"
    odd.mkdir()
    (odd / "board.rig").write_text(RIG.format("odd").replace("language 1\n", 'language 1\nuse "stock/plugs.rig"\n'))
    assert built(tmp_path, ".", "--to", "md", "--sheet", "cable-list", "--deps", "d").returncode == 0
    assert (tmp_path / "d").read_text() == (
        "my\\ \\#\\ $$\\ rigs/documents/cable-list.md: my\\ \\#\\ $$\\ rigs/board.rig units.rig\n"
        "r0/documents/cable-list.md: r0/board.rig units.rig\n"
    )


def test_no_rules_where_nothing_was_written(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("error bad\n")
    assert rigc("build", "a.rig", "--deps", "d").code == 1
    assert not (here / "d").exists()


MAKE = """\
RIGS := $(wildcard r*/board.rig)
all: $(RIGS:board.rig=documents/folder.html)
r%/documents/folder.html: r%/board.rig
	{rigc} build $< --deps $@.d
-include $(wildcard r*/documents/*.d)
"""
NINJA = """\
rule rig
  command = {rigc} build $in --deps $out.d
  depfile = $out.d
  deps = gcc
"""


@pytest.mark.parametrize("engine", ["make", "ninja"])
def test_a_build_engine_takes_it_from_there(engine: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """All is built once, nothing the second time, one rig after its file changed, all after what they use did."""
    if shutil.which(engine) is None:
        pytest.skip(f"needs {engine}")
    monkeypatch.setenv("PYTHONPATH", str(ROOT))
    shop(tmp_path, 2)
    rigc = f"{sys.executable} -m rigc"
    if engine == "make":
        (tmp_path / "Makefile").write_text(MAKE.format(rigc=rigc))
    else:
        edges = "".join(f"build r{n}/documents/folder.html: rig r{n}/board.rig\n" for n in range(2))
        (tmp_path / "build.ninja").write_text(NINJA.format(rigc=rigc) + edges)

    def run() -> int:
        line = [engine, "-v"] if engine == "ninja" else [engine]
        ran = subprocess.run(line, cwd=tmp_path, capture_output=True, text=True)
        assert ran.returncode == 0, ran.stdout + ran.stderr
        return ran.stdout.count("rigc build")

    def touch(name: str) -> None:
        time.sleep(0.05)
        path = tmp_path / name
        path.write_text(path.read_text() + "# changed\n")

    assert [run(), run()] == [2, 0]
    touch("r1/board.rig")
    assert run() == 1
    touch("units.rig")
    assert [run(), run()] == [2, 0]


def test_a_change_is_told_when_all_is_still(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file written in steps is one change; the clock of this test stands unless it is slept."""
    board, other = tmp_path / "a.rig", tmp_path / "b.rig"
    board.write_text("one")
    seen = marks([board, other])
    assert seen[other] is None
    clock, steps = [0.0], iter(["two2", "three", "fourth"])

    def sleep(seconds: float) -> None:
        clock[0] += seconds
        if text := next(steps, ""):
            board.write_text(text * len(text))

    monkeypatch.setattr("rigc.files.marks.time.sleep", sleep)
    monkeypatch.setattr("rigc.files.marks.time.monotonic", lambda: clock[0])
    assert next_change(seen) == {board}
    assert next(steps, None) is None
    assert clock[0] >= 3 * 0.1 + STILL_S - 1e-9


def _listening() -> None:
    """A job in the background of a shell is deaf to interrupts, and so is what it starts."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@pytest.fixture
def watched(tmp_path: Path) -> Iterator[Callable[[str], str]]:
    """`rigc build --watch` of a shop; waits for what it tells, and gives all it told since the last wait."""
    shop(tmp_path, 2)
    told = tmp_path / "told.txt"
    command = [sys.executable, "-m", "rigc", "-v", "build", ".", "--watch", "--jobs", "2"]
    environment = {**_environment(), "PYTHONPATH": str(ROOT)}
    with told.open("w") as into:
        process = subprocess.Popen(
            command, cwd=tmp_path, stderr=into, stdout=into, env=environment, preexec_fn=_listening
        )
    done = [0]

    def until(words: str) -> str:
        for _ in range(600):
            text = told.read_text()[done[0] :]
            if re.search(words, text):
                done[0] += len(text)
                return text
            assert process.poll() is None, text
            time.sleep(0.1)
        raise AssertionError(f"no {words!r} in {text!r}")

    yield until
    process.send_signal(signal.SIGINT)
    assert process.wait(timeout=30) == 130
    assert told.read_text().endswith("rigc: interrupted; no file is left half-written\n")


def test_watching(watched: Callable[[str], str], tmp_path: Path) -> None:
    """What changed is built, an error is told and survived, what all use builds all, a new rig is seen with what was saved."""
    first = watched("watching 3 files")
    assert first.count("wrote ") == 2
    board = tmp_path / "r0/board.rig"
    good = board.read_text()
    board.write_text(good.replace("A r0", "B r0"))
    assert re.findall("wrote .*", watched("watching ")) == ["wrote r0/documents/folder.html"]
    board.write_text(good.replace("../units.rig", "../none.rig"))
    assert "nothing was written" in watched("watching ")
    board.unlink()
    watched("watching ")
    board.write_text(good)
    assert re.findall("wrote .*", watched("watching ")) == ["wrote r0/documents/folder.html"]
    units = tmp_path / "units.rig"
    units.write_text(units.read_text().replace("400 g", "410 g"))
    assert watched("watching ").count("wrote ") == 2


@pytest.mark.parametrize("arguments", [["-o", "-"], []])
def test_what_can_not_be_watched(rigc: Rigc, here: Path, monkeypatch: pytest.MonkeyPatch, arguments: list[str]) -> None:
    import io
    from types import SimpleNamespace

    (here / "a.rig").write_text("fine\n")
    monkeypatch.setattr("sys.stdin", SimpleNamespace(buffer=io.BytesIO(b"fine\n")))
    code, _, err = rigc("build", "--watch", *(["a.rig", *arguments] if arguments else ["-"]))
    assert (code, "--watch is for files, not for standard input or output" in err) == (2, True)
