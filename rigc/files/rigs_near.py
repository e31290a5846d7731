"""A file -> the rigs of its project that might use it, the nearest first."""

from __future__ import annotations

import os
import re
from pathlib import Path

from rigc.files.disk import project_root

MOST = 60
"""So many rigs are looked at: a shop's folder, not a disk."""
_RIG = re.compile(rb"^rig[ \t]+[a-z]", re.MULTILINE)


def rigs_near(path: Path) -> list[Path]:
    """The files with a rig block below the project's folder; hidden folders are passed over."""
    root = project_root(path.parent)
    found = []
    for folder, folders, files in os.walk(root):
        folders[:] = sorted(each for each in folders if not each.startswith("."))
        found += [Path(folder) / name for name in files if name.endswith(".rig")]
        if len(found) > MOST * 4:
            break
    found.sort(key=lambda each: (-len(os.path.commonpath((each, path))), len(each.parts), str(each)))
    return [each for each in found if each != path and _is_rig(each)][:MOST]


def _is_rig(path: Path) -> bool:
    try:
        return _RIG.search(path.read_bytes()) is not None
    except OSError:
        return False
