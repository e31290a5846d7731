"""Nothing that a file, its name or an argument holds acts on a terminal; what goes into a file or a pipe stays as it is."""

from __future__ import annotations

import io

import pytest

from rigc.cli import main
from rigc.cli.screen import Screen

ACTS = "one\x1b[31m\ttwo\x9b\u202e\nthree"


class Stream(io.TextIOWrapper):
    """Standard output, that is a terminal or not."""

    def __init__(self, terminal: bool) -> None:
        super().__init__(io.BytesIO(), "utf-8")
        self.terminal = terminal

    def isatty(self) -> bool:
        return self.terminal

    @property
    def text(self) -> str:
        self.seek(0)
        return self.read()


@pytest.mark.parametrize("given", [ACTS, ACTS.encode()])
def test_what_is_asked_for_does_not_act_on_a_terminal(given: str | bytes, monkeypatch: pytest.MonkeyPatch) -> None:
    terminal, pipe = Stream(True), Stream(False)
    for stream in (terminal, pipe):
        monkeypatch.setattr("sys.stdout", stream)
        Screen().out(given)
    assert terminal.text == "one\\x1b[31m\ttwo\\x9b\\u202e\nthree"
    assert pipe.text == ACTS


def test_a_refusal_does_not_act_on_a_terminal(capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "no\x1b[31m"]) == 2
    err = capfd.readouterr().err
    assert "no\\x1b[31m" in err and "\x1b" not in err
