"""Where tables that were made once are kept: a folder that is the user's own, or none."""

from __future__ import annotations

import os
import stat
import sys
from pathlib import Path


def cache_folder() -> Path | None:
    """The user's cache folder of rigc, made if need be; None where there is none that only this user can write.

    What is kept there is loaded without a check, so a folder of another owner, one with rights for others or a link
    is not used.
    """
    try:
        folder = _base() / "rigc"
        folder.parent.mkdir(parents=True, exist_ok=True)
        folder.mkdir(mode=0o700, exist_ok=True)
        found = folder.lstat()
    except (OSError, RuntimeError, ValueError):
        return None
    if not stat.S_ISDIR(found.st_mode):
        return None
    if os.name == "posix" and (found.st_uid != os.geteuid() or stat.S_IMODE(found.st_mode) != 0o700):
        return None
    return folder


def thinned(folder: Path, prefix: str, most: int) -> None:
    """Takes away the oldest files of a prefix, down to half of `most`, once there are more than that."""
    try:
        kept = [entry for entry in os.scandir(folder) if entry.name.startswith(prefix)]
        if len(kept) > most:
            for entry in sorted(kept, key=lambda each: each.stat().st_mtime_ns)[: len(kept) - most // 2]:
                Path(entry.path).unlink(missing_ok=True)
    except OSError:
        return  # another rigc is at it


def _base() -> Path:
    """The folder for caches that the platform names; XDG_CACHE_HOME counts only if absolute (its specification)."""
    stated = os.environ.get("XDG_CACHE_HOME", "")
    if Path(stated).is_absolute():
        return Path(stated)
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    return Path.home() / ("Library/Caches" if sys.platform == "darwin" else ".cache")
