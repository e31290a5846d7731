"""`rigc serve` as a command: what it prints, that it follows saves, and what it refuses."""

from __future__ import annotations

import http.client
import json
import os
import re
import signal
import socket
import subprocess
import sys
from pathlib import Path

import pytest
from cases import ROOT
from served import STARTER, rig

from rigc.cli import main


def _listening() -> None:
    """A job in the background of a shell is deaf to interrupts, and so is what it starts."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def test_it_prints_an_address_follows_saves_and_ends(tmp_path: Path) -> None:
    """A save is followed though its file was broken in between, and asks for a file that is not there yet."""
    path = rig(tmp_path)
    process = subprocess.Popen(
        [sys.executable, "-m", "rigc", "serve", "board.rig"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        preexec_fn=_listening,
    )
    assert process.stdout is not None
    printed = re.fullmatch(rb"http://127\.0\.0\.1:(\d+)/#([\w-]{32})\n", process.stdout.readline())
    assert printed is not None
    headers = {"X-Rigc-Key": printed[2].decode()}
    ask, listen = (http.client.HTTPConnection("127.0.0.1", int(printed[1]), timeout=60) for _ in range(2))
    listen.request("GET", "/events", headers=headers)
    events = listen.getresponse()

    def until_broken_is(broken: bool) -> None:
        while True:
            if events.readline().startswith(b"data: "):
                ask.request("GET", "/state", headers=headers)
                if json.loads(ask.getresponse().read())["broken"] is broken:
                    return

    until_broken_is(False)
    path.write_text(STARTER.replace("stock/strips", "strips"), "utf-8")
    until_broken_is(True)
    (tmp_path / "strips.rig").write_bytes((ROOT / "rigc/stock/strips.rig").read_bytes())
    until_broken_is(False)
    listen.close()
    process.send_signal(signal.SIGINT)
    assert process.wait(timeout=30) == 130


@pytest.mark.parametrize(
    "words, told",
    [
        (["none.rig"], "rigc: cannot read 'none.rig': there is no such file\n"),
        (["."], "rigc: cannot read '.': it is a folder: name a rig in it\n"),
        (["-"], "rigc serve: a page is for a file, not for standard input (rigc serve --help says more)\n"),
        (
            ["board.rig", "--editor", "code"],
            "rigc serve: --editor names a command with {file} and {line}: 'code -g {file}:{line}' (rigc serve --help says more)\n",
        ),
    ],
)
def test_what_can_not_be_served(
    capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path, words: list[str], told: str
) -> None:
    rig(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert main(["serve", *words]) == 2
    assert capfd.readouterr().err == told


def test_a_port_that_is_taken(
    capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    rig(tmp_path)
    monkeypatch.chdir(tmp_path)
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        assert main(["serve", "board.rig", "--port", str(port)]) == 2
    assert capfd.readouterr().err == f"rigc: cannot serve at port {port}: address already in use\n"
