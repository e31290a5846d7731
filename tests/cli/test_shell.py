"""What shells and `man` are given: completion of commands, rules, sheets and rigs, and a manual page made from the help."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys

import click
import pytest
from click.shell_completion import BashComplete

from rigc.cli import main
from rigc.cli.commands.completion import SHELLS
from rigc.cli.group import rigc as commands


@pytest.mark.parametrize(
    ("words", "typed", "items"),
    [
        ((), "ex", [("explain", "plain")]),
        (("explain",), "plugs", [("plugs-collide", "plain")]),
        (("mend",), "plugs", [("plugs-collide", "plain")]),
        (("mend",), "", [("", "file")]),
        (("check",), "exa", [("exa", "file")]),
        (("show",), "cable", [("cable-list", "plain")]),
        (("build", "--sheet"), "cable-list,cut", [("cable-list,cut-list", "plain")]),
        (("intake",), "gea", [("gea", "file")]),
    ],
)
def test_what_is_completed(words: tuple[str, ...], typed: str, items: list[tuple[str, str]]) -> None:
    found = BashComplete(commands, {}, "rigc", "_RIGC_COMPLETE").get_completions(list(words), typed)
    assert [(each.value, each.type) for each in found] == items


def test_a_shell_is_answered() -> None:
    asked = {"_RIGC_COMPLETE": "bash_complete", "COMP_WORDS": "rigc exp", "COMP_CWORD": "1"}
    told = subprocess.run([sys.executable, "-m", "rigc"], env={**os.environ, **asked}, capture_output=True, check=True)
    assert told.stdout == b"plain,explain\n"


@pytest.mark.parametrize("shell", SHELLS)
def test_the_script_of_each_shell(shell: str, capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", shell]) == 0
    assert f"_RIGC_COMPLETE={shell}_complete" in capfd.readouterr().out


def test_the_manual_page_tells_all_that_help_tells(capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["man"]) == 0
    page = capfd.readouterr().out
    assert [line for line in page.splitlines() if re.match(r"['.](?!TH|SH|SS|TP|PP|B )", line)] == []
    plain = page.replace("\\-", "-").replace("\\e", "\\")
    for name, command in commands.commands.items():
        assert f".SS rigc {name} [OPTIONS]" in plain
        assert " ".join(str(command.help).partition("\n\n")[0].split()) in plain
        for each in command.params:
            assert not isinstance(each, click.Option) or all(option in plain for option in each.opts)


@pytest.mark.skipif(shutil.which("groff") is None, reason="not installed: groff")
def test_the_manual_page_is_set_without_a_warning(capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["man"]) == 0
    page = capfd.readouterr().out.encode()
    told = subprocess.run(["groff", "-ww", "-man", "-Tutf8"], input=page, capture_output=True, check=True)
    assert told.stderr == b""
