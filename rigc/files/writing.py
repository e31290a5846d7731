"""Texts and their paths -> files, all or none: a fault or an interrupt half-way leaves every old file as it was, a kill leaves a note for the next run."""

from __future__ import annotations

import secrets
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from rigc.files.folder_lock import alone_in
from rigc.files.journal import FINISH, GO_BACK, Note, new_of, old_of, put_back, settle


class NotWritable(Exception):
    """A file could not be written; nothing was changed. The text is one line that names the file and the reason."""


def write_all(texts: Mapping[Path, str | bytes], read: Mapping[Path, bytes] | None = None) -> tuple[Path, ...]:
    """Write every text as UTF-8 with LF, and bytes as they are; the paths that changed, in the order given.

    A file that holds its text already is not touched. `read` is what files held from which their new texts were made: one that
    somebody has saved since is not written over, and then none is. Raises `NotWritable`; that and any other exception leave the
    folders as they were.
    """
    change = _Change()
    try:
        targets = [(path, path.resolve() if path.is_symlink() else path) for path in texts]
        for path, target in targets:
            change.make_folder(path, target.parent)
        folders = {target.parent for _, target in targets}
        with alone_in(folders) as alone:
            settle(folders, alone)
            for path, target in targets:
                change.at = path
                _as_read(target, (read or {}).get(path))
            _write_set(change, targets, texts)
    except BaseException as fault:
        _insist(change.remove_folders)
        if isinstance(fault, OSError):
            raise NotWritable(f"cannot write '{change.at}': {_why(fault)}; {change.outcome()}") from None
        raise
    return tuple(path for path, _ in change.staged)


def as_bytes(text: str) -> bytes:
    """A text as it is written."""
    return text.encode("utf-8", "backslashreplace")


def _write_set(change: _Change, targets: Sequence[tuple[Path, Path]], texts: Mapping[Path, str | bytes]) -> None:
    try:
        for path, target in targets:
            text = texts[path]
            change.stage(path, target, text if isinstance(text, bytes) else as_bytes(text))
        change.rename()
    except BaseException:
        _insist(change.undo)
        raise
    _insist(change.clear)


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
        self.mark = secrets.token_hex(4)
        self.staged: list[tuple[Path, Path]] = []  # the path as given, and the file that it stands for
        self.made: set[Path] = set()
        self.note: Note | None = None
        self.renamed: list[Path] = []
        self.folders: list[Path] = []
        self.stuck: list[Path] = []  # targets whose old text could not be put back

    def make_folder(self, path: Path, folder: Path) -> None:
        self.at = path
        missing = [each for each in (folder, *folder.parents) if not each.exists()]
        for each in reversed(missing):
            self.folders.append(each)
            each.mkdir(exist_ok=True)

    def stage(self, path: Path, target: Path, data: bytes) -> None:
        self.at = path
        if _holds(target, data):
            return
        self.staged.append((path, target))
        _write(new_of(target, self.mark), data)
        if target.exists():
            new_of(target, self.mark).chmod(target.stat().st_mode & 0o7777)
            _keep(target, self.mark)
        else:
            self.made.add(target)

    def rename(self) -> None:
        self.note = Note([target for _, target in self.staged], self.made, self.mark)
        self.note.say(FINISH)
        for path, target in self.staged:
            self.at = path
            self.renamed.append(target)
            new_of(target, self.mark).replace(target)

    def undo(self) -> None:
        if self.note:
            self._go_back_from_now_on(self.note)
        for target in reversed(self.renamed):
            try:
                put_back(target, target in self.made, self.mark)
            except OSError:
                self.stuck.append(target)
        self.clear()

    def clear(self) -> None:
        for _, target in self.staged:
            for extra in (new_of(target, self.mark), *([] if target in self.stuck else [old_of(target, self.mark)])):
                try:
                    extra.unlink(missing_ok=True)
                except OSError:
                    continue
        if self.note and not self.stuck:  # else the next run goes on putting back
            self.note.remove()

    def remove_folders(self) -> None:
        for folder in reversed(self.folders):
            try:
                folder.rmdir()
            except OSError:
                return

    def outcome(self) -> str:
        """What became of the old files after `undo`."""
        old = {target: old_of(target, self.mark) for target in self.stuck}
        return (
            ", ".join(f"the old '{target}' is now '{kept}'" for target, kept in old.items() if kept.exists())
            or "nothing was written"
        )

    @staticmethod
    def _go_back_from_now_on(note: Note) -> None:
        try:
            note.say(GO_BACK)
        except OSError:
            note.remove()


def _holds(target: Path, data: bytes) -> bool:
    try:
        return target.stat().st_size == len(data) and target.read_bytes() == data
    except (FileNotFoundError, NotADirectoryError):
        return False


def _as_read(target: Path, data: bytes | None) -> None:
    if data is not None and not _holds(target, data):
        raise OSError(0, "somebody has saved it since it was read")


def _write(path: Path, data: bytes) -> None:
    with path.open("xb") as file:
        file.write(data)


def _keep(target: Path, mark: str) -> None:
    """Give the old file a second name; a copy where the file system has no links."""
    try:
        old_of(target, mark).hardlink_to(target)
    except OSError:
        _write(old_of(target, mark), target.read_bytes())


def _why(fault: OSError) -> str:
    if isinstance(fault, IsADirectoryError):
        return "it is a folder"
    if isinstance(fault, FileExistsError | NotADirectoryError):
        return "a part of its path is a file, not a folder"
    return (fault.strerror or type(fault).__name__).lower()
