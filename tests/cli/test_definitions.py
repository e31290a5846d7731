"""What others run of ours: the hooks for commits and the job of a forge name commands, options and limits that there are."""

from __future__ import annotations

import shlex
from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import ROOT

from rigc.cli.commands.git import HOOK, JOB
from rigc.cli.group import rigc

HOOKS: list[Any] = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))
LOCAL: list[Any] = yaml.safe_load(HOOK)["repos"][0]["hooks"]
STEPS: list[Any] = yaml.safe_load(JOB)["jobs"]["rigs"]["steps"]
COMMENT_AT_MOST = 65_536
"""Characters of a comment that the forge takes; from memory."""


def parsed(line: str) -> dict[str, Any]:
    """The parameters of a line of rigc's, as the command reads them; fails where it would be refused."""
    program, name, *words = shlex.split(line)
    assert program == "rigc"
    return rigc.commands[name].make_context(name, words).params


def lines() -> list[str]:
    """The lines of the job that run rigc, with what the runner puts in place of its blanks."""
    text = "\n".join(step.get("run", "") for step in STEPS)
    text = text.replace("${{ github.base_ref }}", "main").replace("$rig", "a.rig")
    found = [line.strip() for line in text.splitlines() if line.strip().startswith("rigc ")]
    return [line.partition(" > ")[0] for line in found]


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder of its own: options that name files look whether these exist."""
    monkeypatch.chdir(tmp_path)


@pytest.mark.parametrize("entry", [each["entry"] for each in (*HOOKS, *LOCAL)])
def test_a_hook_runs(entry: str) -> None:
    parsed(entry)


def test_the_hooks_are_those_of_the_local_definition() -> None:
    """Who installs rigc by himself and who lets the hooks install it gets the same."""
    entries = {each["id"]: each["entry"] for each in HOOKS}
    assert {each["id"]: each["entry"] for each in LOCAL}.items() <= entries.items()
    assert all(each["language"] == "python" for each in HOOKS)


def test_the_job_runs() -> None:
    told = {line.split()[1]: parsed(line) for line in lines()}
    assert list(told) == ["fmt", "check", "fresh", "diff"]
    assert told["check"]["paths"] == (".",)
    assert told["diff"]["limit"] <= COMMENT_AT_MOST
    (upload,) = [step["with"] for step in STEPS if "upload-sarif" in step.get("uses", "")]
    assert ("sarif", upload["sarif_file"]) in told["check"]["findings"]
