"""Paths -> the rigs that they name: of a folder every file below it that declares one, not the stock and units that rigs use."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

import click

from rigc.cli.options import Given, disks
from rigc.files.disk import Disk
from rigc.loader import Unreadable

_HEAD = re.compile(r"^[ \t]*rig[ \t]+\S", re.MULTILINE | re.IGNORECASE)
"""How a line begins that declares a rig, even where the rest of it can't be read: such a file is not passed over in silence."""


def rig_disks(paths: Sequence[str], given: Given) -> list[Disk]:
    """A loader for each rig, those that are named first; without a path, for the only .rig file of the current folder.

    A rig that is named beside its folder is taken once.
    """
    from rigc.cli.whole_file import rig_files

    named = [path for path in paths if path == "-" or not Path(path).is_dir()]
    found = disks(named, given) if named or not paths else []
    known = {disk.typed for disk in found}
    for folder in (path for path in dict.fromkeys(paths) if path not in named):
        files = rig_files((folder,))
        below = list(filter(declares_rig, disks(files, given))) if files else []
        if not below:
            raise click.UsageError(f"no file below '{folder}' declares a rig")
        found += [disk for disk in below if disk.typed not in known]
        known |= {disk.typed for disk in below}
    return found


def declares_rig(disk: Disk) -> bool:
    """Whether the file that `disk` is for declares a rig; one that can't be read may."""
    try:
        return bool(_HEAD.search(disk(disk.name).text))
    except Unreadable:
        return True
