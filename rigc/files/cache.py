"""Where what was made once is kept: a folder that is the user's own, or none; files of it that are whole, or none."""

from __future__ import annotations

import hashlib
import os
import stat
import sys
import tempfile
import time
from pathlib import Path

from rigc.record import Record

MOST_KEPT = {"parsed": 200, "told": 200, "tables": 4, "reserved": 4, "escaped": 400, "plain": 400, "page": 200}
"""So many files of each sort are kept: a shop's rigs with what they use are fewer; the tables and templates of a few versions of
rigc; where a rig's page was last served."""
_UNDER_WAY = "new-"
_DEAD_AFTER_S = 3600  # no run takes as long to write a file


def cache_folder() -> Path | None:
    """The user's cache folder of rigc, made if need be; None where there is none that only this user can write.

    Some of what is kept there is loaded as code, so a folder of another owner, one with rights for others or a link
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


class Cache(Record):
    """Files by name, `sort-what`. One that can't be written costs time and nothing else; one that is cut short, in which a bit has
    turned, or that was another's, is as none."""

    folder: Path | None

    def read(self, name: str) -> bytes | None:
        """What was last written under that name, or None."""
        if self.folder is None:
            return None
        try:
            saved = (self.folder / name).read_bytes()
        except OSError:
            return None
        data = saved[32:]
        return data if _sum(name, data) == saved[:32] else None

    def write(self, name: str, data: bytes) -> None:
        """Keeps the data, whole or not at all; the oldest of its sort go once there are too many, and so do files that a killed run left."""
        if self.folder is None:
            return
        try:
            handle, temporary = tempfile.mkstemp(prefix=_UNDER_WAY, dir=self.folder)
        except OSError:
            return
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(_sum(name, data) + data)
            Path(temporary).replace(self.folder / name)
        except OSError:
            Path(temporary).unlink(missing_ok=True)
        sort = name.partition("-")[0]
        thinned(self.folder, f"{sort}-", MOST_KEPT[sort])


def _sum(name: str, data: bytes) -> bytes:
    return hashlib.sha256(f"{name}\0".encode() + data).digest()


def cache() -> Cache:
    """The user's cache; one that keeps nothing where there is no folder that is his alone."""
    return Cache(cache_folder())


def thinned(folder: Path, prefix: str, most: int) -> None:
    """Takes away the oldest files of a prefix, down to half of `most`, once there are more than that; and what a killed run left unfinished."""
    dead = time.time() - _DEAD_AFTER_S
    kept: list[tuple[int, str]] = []
    try:
        for entry in os.scandir(folder):
            if entry.name.startswith(prefix):
                kept.append((entry.stat().st_mtime_ns, entry.path))
            elif entry.name.startswith((_UNDER_WAY, "tmp")) and entry.stat().st_mtime < dead:
                Path(entry.path).unlink(missing_ok=True)
        if len(kept) > most:
            for _, path in sorted(kept)[: len(kept) - most // 2]:
                Path(path).unlink(missing_ok=True)
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
