"""Tests of editing borrow random rigs from the tests of the syntax, and run commands with the real compiler."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

sys.path.insert(0, str(Path(__file__).parent.parent / "syntax"))


class Run(NamedTuple):
    """What a command gave."""

    code: int
    out: str
    err: str


Command = Callable[..., Run]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfdbinary: pytest.CaptureFixture[bytes]) -> Command:
    """Run rigc in this process, in an empty folder whose name has a space and a letter beyond ASCII."""
    from rigc.cli import main

    here = tmp_path / "bör d"
    here.mkdir()
    (here / "rig-root").touch()
    monkeypatch.chdir(here)

    def once(*arguments: str) -> Run:
        code = main(arguments)
        out, err = capfdbinary.readouterr()
        return Run(code, out.decode(), err.decode())

    return once
