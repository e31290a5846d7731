"""`rigc new`: a small commented rig to start from, where there is none."""

from __future__ import annotations

import re
from pathlib import Path

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.screen import Screen


@click.command()
@click.argument("name", required=False, metavar="[NAME|PATH]", shell_complete=rigs)
@click.pass_obj
def new(screen: Screen, name: str | None) -> int:
    """Write a small commented rig to start from.

    NAME makes a folder of that name with a file board.rig; PATH, which ends in .rig, is the file itself; without either
    it is board.rig in this folder. Nothing that is there already is written over.
    """
    from datetime import datetime

    from rigc.cli.report import save
    from rigc.edit.starter import starter

    path = Path("board.rig") if name is None else Path(name) if name.endswith(".rig") else Path(name) / "board.rig"
    if path.exists() or path.is_symlink():
        raise click.ClickException(f"'{path.as_posix()}' is there already; nothing was written")
    rig = _rig_name(path)
    day = datetime.now().astimezone().date().isoformat()
    save({path: starter(rig, rig.replace("-", " ").title(), day, path.as_posix())})
    screen.progress(f"wrote {path.as_posix()}; next: rigc check {path.as_posix()}\n")
    return 0


def _rig_name(path: Path) -> str:
    """A name for the rig: that of the file or, where this is board.rig, of its folder, in letters that a name can have."""
    typed = path.stem if path.stem != "board" else path.parent.name
    found = re.sub(r"[^a-z0-9]+", "-", typed.lower()).strip("-")
    return found if re.match(r"[a-z]", found) else "my-board"
