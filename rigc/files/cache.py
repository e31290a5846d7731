"""Where what was made once is kept: a folder that is the user's own, or none; files of it that are whole, or none."""

from __future__ import annotations

import hashlib
import os
import stat
import sys
import time
from pathlib import Path

from rigc.record import Record

MOST_BYTES = 512 * 1024**2
"""So much is kept at most: what some thousand touring rigs and their parses take."""
UNUSED_S = 60 * 24 * 3600
"""What nobody has read for so long goes when the folder is tidied."""
_TIDIED_AFTER = MOST_BYTES // 4
_MARKS_EVERY = 4096
_WRITTEN = "written"
"""A file as long as there are blocks of `_MARKS_EVERY` bytes that were written since the folder was tidied: what is kept need not be
counted at each write."""
_UNDER_WAY = "new-"
_DEAD_AFTER_S = 3600  # no run takes as long to write a file
_READ_AGAIN_S = 24 * 3600  # how exactly it is known when something was last read


def cache_folder() -> Path | None:
    """The user's cache folder of rigc, made if need be; None where there is none that only this user can write.

    What is kept there is data and no code, but it is told as rigc's own, so a folder of another owner, one with rights for others or a
    link is not used.
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
        path = self.folder / name
        try:
            with path.open("rb") as file:
                saved = file.read()
                written = os.fstat(file.fileno()).st_mtime
            if time.time() - written > _READ_AGAIN_S:
                os.utime(path)
        except OSError:
            return None
        data = saved[32:]
        return data if _sum(name, data) == saved[:32] else None

    def write(self, name: str, data: bytes) -> None:
        """Keeps the data, whole or not at all; now and then what was not read for long goes, and so do files that a killed run left."""
        if self.folder is None:
            return
        try:
            if _marked(self.folder, len(data)) > _TIDIED_AFTER:
                (self.folder / _WRITTEN).unlink(missing_ok=True)
                tidied(self.folder)
        except OSError:
            return
        temporary = self.folder / f"{_UNDER_WAY}{os.getpid():x}-{time.time_ns():x}"
        try:
            with temporary.open("xb") as file:
                file.write(_sum(name, data) + data)
            temporary.replace(self.folder / name)
        except OSError:
            temporary.unlink(missing_ok=True)


def _sum(name: str, data: bytes) -> bytes:
    return hashlib.sha256(f"{name}\0".encode() + data).digest()


def cache() -> Cache:
    """The user's cache; one that keeps nothing where there is no folder that is his alone."""
    return Cache(cache_folder())


def tidied(folder: Path, most: int = MOST_BYTES) -> None:
    """Takes away what was not read for long, then, if there is more than `most` bytes, what was not read for longest until half is left."""
    now = time.time()
    kept: list[tuple[int, int, str]] = []
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                state = entry.stat(follow_symlinks=False)
                dead_after = _DEAD_AFTER_S if entry.name.startswith((_UNDER_WAY, "tmp")) else UNUSED_S
                if now - state.st_mtime > dead_after:
                    Path(entry.path).unlink(missing_ok=True)
                else:
                    kept.append((state.st_mtime_ns, state.st_size, entry.path))
        left = sum(size for _, size, _ in kept)
        for _, size, path in sorted(kept) if left > most else ():
            if left <= most // 2:
                break
            Path(path).unlink(missing_ok=True)
            left -= size
    except OSError:
        return  # another rigc is at it


def _marked(folder: Path, size: int) -> int:
    """Bytes written since the folder was tidied, with so many more that now will be; a little too many, since each write counts as whole blocks."""
    with (folder / _WRITTEN).open("ab") as file:
        file.write(b"." * (1 + size // _MARKS_EVERY))
        file.flush()
        return os.fstat(file.fileno()).st_size * _MARKS_EVERY


def _base() -> Path:
    """The folder for caches that the platform names; XDG_CACHE_HOME counts only if absolute (its specification)."""
    stated = os.environ.get("XDG_CACHE_HOME", "")
    if Path(stated).is_absolute():
        return Path(stated)
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    return Path.home() / ("Library/Caches" if sys.platform == "darwin" else ".cache")
