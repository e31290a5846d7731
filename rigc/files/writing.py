"""Texts and their paths -> files, all or none: a fault or an interrupt half-way leaves every old file as it was."""

from __future__ import annotations

import os
import re
import time
from collections.abc import Callable, Mapping
from pathlib import Path

_DEAD_AFTER_S = 3600


class NotWritable(Exception):
    """A file could not be written; nothing was changed. The text is one line that names the file and the reason."""


def write_all(texts: Mapping[Path, str | bytes]) -> tuple[Path, ...]:
    """Write every text as UTF-8 with LF, and bytes as they are; the paths that changed, in the order given.

    A file that holds its text already is not touched. Raises `NotWritable`; that and any other exception leave the
    folders as they were.
    """
    change = _Change()
    try:
        for path, text in texts.items():
            change.stage(path, text if isinstance(text, bytes) else text.encode("utf-8", "backslashreplace"))
        change.rename()
    except BaseException as fault:
        _insist(change.undo)
        if isinstance(fault, OSError):
            raise NotWritable(f"cannot write '{change.at}': {_why(fault)}; {change.outcome()}") from None
        raise
    _insist(change.clear)
    return tuple(path for path, _ in change.staged)


def _insist(step: Callable[[], None]) -> None:
    """Take a step to its end, though an interrupt comes in between; the step can be taken twice."""
    try:
        step()
    except KeyboardInterrupt:
        step()
        raise


class _Change:
    """The files beside the targets while a set is written: the new texts, and second names of the old ones.

    A name is noted before the file is made, so that an interrupt between the two leaves nothing behind.
    """

    def __init__(self) -> None:
        self.at: Path = Path()
        self.staged: list[tuple[Path, Path]] = []  # the path as given, and the file that it stands for
        self.renamed: list[Path] = []
        self.folders: list[Path] = []
        self.left: dict[Path, dict[str, list[Path]]] = {}  # by folder
        self.stuck: list[Path] = []  # targets whose old text could not be put back

    def stage(self, path: Path, data: bytes) -> None:
        self.at = path
        target = path.resolve() if path.is_symlink() else path
        if _holds(target, data):
            return
        self._make_folder(target.parent)
        self.staged.append((path, target))
        if target.parent not in self.left:
            self.left[target.parent] = _left_in(target.parent)
        _clear(self.left[target.parent].get(target.name, []), target)
        new = _new(target)
        new.unlink(missing_ok=True)
        _write(new, data)
        if target.exists():
            new.chmod(target.stat().st_mode & 0o7777)
            _keep(target)

    def rename(self) -> None:
        for path, target in self.staged:
            self.at = path
            self.renamed.append(target)
            _new(target).replace(target)

    def undo(self) -> None:
        for target in reversed(self.renamed):
            try:
                _put_back(target)
            except OSError:
                self.stuck.append(target)
        self.clear()
        for folder in reversed(self.folders):
            try:
                folder.rmdir()
            except OSError:
                return

    def clear(self) -> None:
        for _, target in self.staged:
            for extra in (_new(target), *([] if target in self.stuck else [_old(target)])):
                try:
                    extra.unlink(missing_ok=True)
                except OSError:
                    continue

    def outcome(self) -> str:
        """What became of the old files after `undo`."""
        kept = [f"the old '{target}' is now '{_old(target)}'" for target in self.stuck if _old(target).exists()]
        return ", ".join(kept) or "nothing was written"

    def _make_folder(self, folder: Path) -> None:
        missing = [each for each in (folder, *folder.parents) if not each.exists()]
        for each in reversed(missing):
            self.folders.append(each)
            each.mkdir(exist_ok=True)


def _new(target: Path) -> Path:
    return target.with_name(f".{target.name}.{os.getpid()}.new")


def _old(target: Path) -> Path:
    return target.with_name(f".{target.name}.{os.getpid()}.old")


def _left_in(folder: Path) -> dict[str, list[Path]]:
    """What runs that were killed an hour ago or more left in a folder, by the names of the targets: none that lives takes as long to write."""
    found: dict[str, list[Path]] = {}
    latest = time.time() - _DEAD_AFTER_S
    for path in folder.iterdir() if folder.is_dir() else ():
        name = re.fullmatch(r"\.(.+)\.\d+\.(?:new|old)", path.name)
        if name and max(path.lstat().st_mtime, path.lstat().st_ctime) < latest:
            found.setdefault(name[1], []).append(path)
    return found


def _clear(left: list[Path], target: Path) -> None:
    """An old text stays where it is no longer the target's: it may be the only one that there is."""
    for path in left:
        if path.suffix == ".new" or (target.exists() and path.samefile(target)):
            path.unlink(missing_ok=True)


def _holds(target: Path, data: bytes) -> bool:
    try:
        return target.stat().st_size == len(data) and target.read_bytes() == data
    except (FileNotFoundError, NotADirectoryError):
        return False


def _write(path: Path, data: bytes) -> None:
    with path.open("xb") as file:
        file.write(data)


def _keep(target: Path) -> None:
    """Give the old file a second name; a copy where the file system has no links."""
    old = _old(target)
    old.unlink(missing_ok=True)
    try:
        old.hardlink_to(target)
    except OSError:
        _write(old, target.read_bytes())


def _put_back(target: Path) -> None:
    """Give the target its old text again, or remove it if it had none; right also if it was not renamed yet."""
    if _old(target).exists():
        _old(target).replace(target)
    elif not _new(target).exists():
        target.unlink(missing_ok=True)


def _why(fault: OSError) -> str:
    if isinstance(fault, IsADirectoryError):
        return "it is a folder"
    if isinstance(fault, FileExistsError | NotADirectoryError):
        return "a part of its path is a file, not a folder"
    return (fault.strerror or type(fault).__name__).lower()
