"""`rigc git`: readable differences of rigs in a git repository, and the way back."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from rigc.cli.screen import Screen
from rigc.cli.whole_list import WholeList

ATTRIBUTE = "*.rig diff=rig"
SETTINGS = {
    "diff.rig.textconv": "rigc git text",
    "diff.rig.xfuncname": "^([a-z].*)[{]",
    "diff.rig.wordRegex": '"[^"]*"|[^[:space:],]+',
    "difftool.rig.cmd": 'rigc git compare "$LOCAL" "$REMOTE" "$MERGED"',
}
HOOK = """\
# For .pre-commit-config.yaml: rigs are canonical and without errors, documents are what the sources give.
repos:
  - repo: local
    hooks:
      - id: rigc-fmt
        name: rigs are canonical
        entry: rigc fmt --check
        language: system
        files: '\\.rig$'
      - id: rigc-fresh
        name: rigs have no errors, their documents are fresh
        entry: rigc fresh
        language: system
        pass_filenames: false
        always_run: true
"""


JOB = """\
# For .github/workflows/rigs.yml: findings on the changed lines and in the list of code findings, what changes as a comment.
name: rigs
on: [pull_request]
permissions:
  contents: read
  pull-requests: write
  security-events: write
jobs:
  rigs:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
        with:
          fetch-depth: 0
      - uses: actions/setup-python@v5
        with:
          python-version: "3.13"
      - run: pip install rigc
      - name: rigs are canonical
        run: rigc fmt --check .
      - name: findings
        run: rigc check . --findings github --findings sarif=rigs.sarif
      - name: findings to the forge
        if: always() && hashFiles('rigs.sarif') != ''
        uses: github/codeql-action/upload-sarif@v3
        with:
          sarif_file: rigs.sarif
          category: rigc
      - name: documents are fresh
        run: rigc fresh .
      - name: what changes, and the work
        if: always()
        env:
          GH_TOKEN: ${{ github.token }}
        run: |
          git diff --name-only --diff-filter=M "origin/${{ github.base_ref }}" -- '*.rig' | while read -r rig; do
            grep -qiE '^[[:blank:]]*rig[[:blank:]]' "$rig" || continue
            rigc diff --to md --limit 60000 "origin/${{ github.base_ref }}" -- "$rig" > changes.md || continue
            gh pr comment "${{ github.event.number }}" --body-file changes.md
          done
"""


@click.group(cls=WholeList)
def git() -> None:
    """Set up readable differences of rigs in this git repository.

    `git diff` then shows rigs in canonical text under the head of their block; `git difftool -t rig` shows which
    statements changed. Existing settings are kept; nothing else changes.
    """


@git.command()
@click.pass_obj
def setup(screen: Screen) -> int:
    """Add the settings that are not there yet to .git/config and .gitattributes."""
    with _refusals():
        from rigc.files import git as repository

        top = repository.top_folder()
        for key, value in SETTINGS.items():
            now = repository.setting(key)
            if now is None:
                repository.change_setting(key, value)
            screen.progress(f"{'kept' if now not in (None, value) else 'set'} {key} = {now or value}\n")
        now = repository.diff_attribute(top)
        if now == "unspecified":
            repository.add_attribute(top, ATTRIBUTE)
        screen.progress(f"set {ATTRIBUTE}\n" if now in ("rig", "unspecified") else f"kept *.rig diff={now}\n")
    return 0


@git.command()
@click.pass_obj
def show(screen: Screen) -> int:
    """Print the settings that `setup` makes and whether they are there; exit code 1 if one is not."""
    with _refusals():
        from rigc.files import git as repository

        top = repository.top_folder()
        told = [(f"{key} = {value}", repository.setting(key), value) for key, value in SETTINGS.items()]
        attribute = repository.diff_attribute(top)
    told.append((ATTRIBUTE, None if attribute == "unspecified" else attribute, "rig"))
    for line, now, value in told:
        state = "not set" if now is None else "set" if now == value else f"otherwise: {now}"
        screen.out(f"{line} ({state})\n")
    missing = sum(now != value for _, now, value in told)
    if missing:
        screen.err(f"{missing} of {len(told)} are not set so; rigc git setup adds those that are not set\n")
    return 1 if missing else 0


@git.command()
@click.pass_obj
def undo(screen: Screen) -> int:
    """Take back what `setup` added; what somebody changed since then stays."""
    with _refusals():
        from rigc.files import git as repository

        top = repository.top_folder()
        for key, value in SETTINGS.items():
            if repository.drop_setting(key, value):
                screen.progress(f"removed {key}\n")
        if repository.drop_attribute(top, ATTRIBUTE):
            screen.progress(f"removed {ATTRIBUTE}\n")
    return 0


@git.command()
@click.pass_obj
def hook(screen: Screen) -> int:
    """Print a definition of checks to run before each commit."""
    screen.out(HOOK)
    return 0


@git.command()
@click.pass_obj
def job(screen: Screen) -> int:
    """Print a job for a forge: findings on the changed lines, what changes as a comment."""
    screen.out(JOB)
    return 0


@git.command(hidden=True)
@click.argument("path")
@click.pass_obj
def text(screen: Screen, path: str) -> int:
    """Print the rig in canonical text, or as it is where it can't be read whole."""
    from rigc.cli.compared import legible

    screen.out(legible(Path(path), path))
    return 0


@git.command(hidden=True)
@click.argument("old")
@click.argument("new")
@click.argument("name", default="")
@click.pass_obj
def compare(screen: Screen, old: str, new: str, name: str) -> int:
    """Print which statements differ between two files of one rig."""
    from rigc.cli.compared import compared

    screen.out(compared(Path(old), Path(new), name or new))
    return 0


@contextmanager
def _refusals() -> Iterator[None]:
    """Ends the command with exit code 2 where git, or writing, refuses."""
    from rigc.files.git import NoGit
    from rigc.files.writing import NotWritable

    try:
        yield
    except (NoGit, NotWritable) as fault:
        raise click.ClickException(str(fault)) from None
    except OSError as fault:
        raise click.ClickException(f"cannot change git's settings: {(fault.strerror or '').lower()}") from None
