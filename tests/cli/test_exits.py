"""The exit codes, and the one line that every one but 0 has."""

from __future__ import annotations

import gc
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from cases import ROOT

from cli.conftest import Rigc
from rigc import __version__

RIGC = [sys.executable, "-m", "rigc"]


@pytest.mark.parametrize(
    ("arguments", "line"),
    [
        ([], "rigc: missing command (rigc --help says more)"),
        (["chek"], "rigc: no command 'chek'; did you mean 'check'? (rigc --help says more)"),
        (["zzz"], "rigc: no command 'zzz' (rigc --help says more)"),
        (
            ["check", "--fail-n", "x"],
            "rigc check: no option '--fail-n'; did you mean '--fail-on'? (rigc check --help says more)",
        ),
        (["check", "-q"], "rigc check: option '-q' goes before the command (rigc check --help says more)"),
        (["explain", "P03x", "y"], "rigc explain: got unexpected extra argument (y) (rigc explain --help says more)"),
    ],
)
def test_usage_is_told_in_one_line(rigc: Rigc, arguments: list[str], line: str) -> None:
    assert rigc(*arguments) == (2, "", f"{line}\n")


def test_a_level_that_there_is_not(rigc: Rigc) -> None:
    code, _, err = rigc("check", "--fail-on", "fatal")
    assert (code, err.count("\n")) == (2, 1)
    assert "'fatal' is not one of" in err


def test_version_and_help_are_answers(rigc: Rigc) -> None:
    assert rigc("--version") == (0, f"rigc {__version__}, language 1\n", "")
    for arguments in (["--help"], ["-h"], ["check", "--help"], ["build", "-h"]):
        code, out, err = rigc(*arguments)
        assert (code, err) == (0, "")
        assert out.startswith("Usage: rigc")


@pytest.mark.parametrize("collects", [True, False])
def test_whoever_runs_it_collects_circles_as_before(rigc: Rigc, collects: bool) -> None:
    """One worker of these tests grew to 5 GB: after the first command in it nothing was collected any more."""
    was = gc.isenabled()
    try:
        (gc.enable if collects else gc.disable)()
        for arguments in (["--version"], ["chek"]):
            rigc(*arguments)
            assert gc.isenabled() == collects
    finally:
        (gc.enable if was else gc.disable)()


def test_a_bug_is_one_line_and_a_file(rigc: Rigc, here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (here / "tmp").mkdir()
    (here / "a.rig").write_text("crash\n")
    code, out, err = rigc("check", "a.rig")
    assert (code, out) == (70, "")
    (report,) = (here / "tmp").iterdir()
    assert err == f"rigc: a bug in rigc, not in the rig: ZeroDivisionError: a bug; details in {report}\n"
    assert "compile_toy" in report.read_text()
    monkeypatch.setenv("RIGC_DEBUG", "1")
    err = rigc("check", "a.rig").err
    assert err.startswith("Traceback")
    assert err.splitlines()[-1].startswith("rigc: a bug in rigc")


def test_a_bug_without_a_temporary_folder(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("crash\n")
    code, _, err = rigc("check", "a.rig")
    assert (code, err.count("\n")) == (70, 1)
    assert "set RIGC_DEBUG=1" in err


@pytest.mark.usefixtures("here")
def test_a_name_of_a_file_cannot_steer_the_terminal(rigc: Rigc) -> None:
    said = "a\\x1b[2J.rig: error: cannot read 'a\\x1b[2J.rig': there is no such file\n"
    code, _, err = rigc("check", "a\x1b[2J.rig")
    assert (code, err[: len(said)], "\x1b" in err) == (2, said, False)


def test_an_interrupt(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("stop\n")
    assert rigc("check", "a.rig") == (130, "", "rigc: interrupted; no file is left half-written\n")


def test_a_request_to_end_is_an_interrupt() -> None:
    process = subprocess.Popen([*RIGC, "check", "-"], stdin=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        _wait_until_reading(process.pid)
        process.send_signal(signal.SIGTERM)
        assert process.wait(timeout=20) == 130
        assert process.stderr is not None
        assert process.stderr.read() == "rigc: interrupted; no file is left half-written\n"
    finally:
        process.kill()
        process.communicate()


def test_a_reader_that_has_gone_is_no_fault() -> None:
    read, write = os.pipe()
    os.close(read)
    done = subprocess.run([*RIGC, "--help"], stdout=write, stderr=subprocess.PIPE)
    os.close(write)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.mark.parametrize("arguments", [["--help"], ["explain"]])
def test_a_full_standard_output_is_told(arguments: list[str]) -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run([*RIGC, *arguments], stdout=full, stderr=subprocess.PIPE)
    assert done.returncode == 2
    assert done.stderr == b"rigc: cannot write to standard output: no space left on device\n"


def test_help_loads_nothing_beyond_click() -> None:
    code = (
        "import sys; from rigc.cli import main; main(['--help']);"
        "print([name for name in ('lark', 'pint', 'networkx', 'jinja2', 'json', 'rigc.compile', 'rigc.reports')"
        " if name in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert done.stderr == "[]\n"


@pytest.mark.parametrize(
    ("environment", "arguments", "coloured"),
    [
        ({}, [], False),
        ({"FORCE_COLOR": "1"}, [], True),
        ({"FORCE_COLOR": "1", "NO_COLOR": "1"}, [], False),
        ({"NO_COLOR": "1"}, ["--color", "always"], True),
        ({"FORCE_COLOR": "1"}, ["--color", "never"], False),
    ],
)
def test_who_decides_on_colour(
    rigc: Rigc,
    here: Path,
    monkeypatch: pytest.MonkeyPatch,
    environment: dict[str, str],
    arguments: list[str],
    coloured: bool,
) -> None:
    (here / "a.rig").write_text("error e\n")
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    assert ("\x1b[" in rigc(*arguments, "check", "a.rig").out) is coloured


def _wait_until_reading(pid: int) -> None:
    """Wait until the process sleeps in a read of its standard input, or for twenty seconds."""
    for _ in range(400):
        try:
            if Path(f"/proc/{pid}/syscall").read_text().startswith("0 0x0 "):
                return
        except OSError:
            time.sleep(1)  # no such look into processes here
        time.sleep(0.05)


@pytest.mark.parametrize(
    "words",
    [
        ["show", "power-table", "--to", "md", "tests/inputs/tutorial.rig"],
        pytest.param(["build", "-o", "-", "--draft", "examples/back-bedroom/board.rig"], marks=pytest.mark.long),
    ],
    ids=lambda words: words[0],
)
def test_the_surroundings_change_nothing(words: list[str]) -> None:
    """Neither the machine's language and its encoding, nor the order in which sets are walked, nor the clock's zone, nor a cache."""
    alike = {
        subprocess.run(
            [*RIGC, *words],
            capture_output=True,
            check=True,
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT), **more},
        ).stdout
        for more in (
            {"LC_ALL": "C", "PYTHONHASHSEED": "1", "TZ": "UTC"},
            {
                "LC_ALL": "tr_TR.ISO-8859-9",
                "PYTHONHASHSEED": "4242",
                "TZ": "Asia/Kathmandu",
                "PYTHONUTF8": "0",
                "XDG_CACHE_HOME": "/dev/null/none",
            },
        )
    }
    assert len(alike) == 1 and alike != {b""}
