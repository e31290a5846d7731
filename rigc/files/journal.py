"""What a set of files that is being written notes beside them, and how the next run makes whole what a killed one left.

Each target's new text lies beside it under a second name, and so does its old one. Until the note says that all are there, the set never
was; from then on it is finished by whoever comes next. A run that goes back over its own renames says so in the note first.
"""

from __future__ import annotations

import os
import re
import time
from collections.abc import Collection, Sequence
from pathlib import Path
from typing import Any

from rigc.files.folder_lock import alone_in

_DEAD_AFTER_S = 3600
_NOTE = re.compile(r"\.rigc\.([0-9a-f]{8})\.set")
_PART = re.compile(r"\.rigc\.([0-9a-f]{8})\.set\.part")
_BESIDE = re.compile(r"\.(.+)\.([0-9a-f]{8})\.(?:new|old)")

FINISH, GO_BACK = "finish", "go back"


def new_of(target: Path, mark: str) -> Path:
    """Where the new text of a target lies until all of the set do."""
    return target.with_name(f".{target.name}.{mark}.new")


def old_of(target: Path, mark: str) -> Path:
    """The second name of a target's old text."""
    return target.with_name(f".{target.name}.{mark}.old")


class Note:
    """The note of one set, in each folder that it writes in; that of the first folder decides, the others lead to it.

    `made` are the targets that had no old text.
    """

    def __init__(self, targets: Sequence[Path], made: Collection[Path], mark: str) -> None:
        self.targets = targets
        self.made = made
        self.mark = mark
        self.folders = list(dict.fromkeys(target.parent for target in targets))

    def say(self, what: str) -> None:
        """Notes that the set is to be finished, or to be gone back over; whole or not at all."""
        import json  # not needed to tell help

        for folder in reversed(self.folders):
            targets = {_from(folder, target): target in self.made for target in self.targets}
            text = {"to": what, "first": _from(folder, self.folders[0]), "made": targets}
            part = folder / f".rigc.{self.mark}.set.part"
            part.write_text(json.dumps(text), encoding="utf-8", errors="surrogateescape")
            part.replace(_note(folder, self.mark))

    def remove(self) -> None:
        """Takes the note away once the set is whole; the one that decides goes last."""
        for folder in reversed(self.folders):
            _remove(folder / f".rigc.{self.mark}.set.part")
            _remove(_note(folder, self.mark))


def settle(folders: Collection[Path], alone: bool = True) -> None:
    """Finishes or takes back what killed runs left in folders whose locks are held; where no lock can be had (`alone` is false), only what
    is an hour old: no run that lives takes as long. What can't be settled stays as it is."""
    held = {folder.resolve() for folder in folders}
    left = [folder / name for folder in folders for name in _names(folder) if _is_ours(name)]
    dead = [path for path in left if alone or _is_dead(path)]
    for path in dead:
        note = _NOTE.fullmatch(path.name)
        if note:
            _settle_set(path.parent, note[1], held)
    for path in dead:
        if not _note(path.parent, _mark(path.name)).exists():
            _clear(path)


def settle_for_reading(folder: Path) -> None:
    """The same before a folder's files are read, where a note lies there and nobody else is at it."""
    if any(map(_NOTE.fullmatch, _names(folder))):
        try:
            with alone_in((folder,), patience_s=0) as alone:
                settle((folder,), alone)
        except OSError:
            return


def put_back(target: Path, made: bool, mark: str) -> None:
    """Gives the target its old text again, or removes one that had none; right also if it was not renamed yet, or is put back already."""
    if not made and old_of(target, mark).exists():
        old_of(target, mark).replace(target)
    elif made and not new_of(target, mark).exists():
        target.unlink(missing_ok=True)


def _settle_set(folder: Path, mark: str, held: set[Path]) -> None:
    told, first = _read(_note(folder, mark)), folder
    if told and told["first"] != ".":
        first = folder / told["first"]
        told = _read(_note(first, mark))
    if not told:
        _remove(_note(folder, mark))
        return
    named = {Path(os.path.normpath(first / name)): made for name, made in told["made"].items()}
    targets = {
        target: made for target, made in named.items() if _note(target.parent, mark).exists()
    }  # a note from elsewhere reaches no other folder
    note = Note(list(targets), [], mark)
    try:
        with alone_in([each for each in note.folders if each.resolve() not in held], patience_s=0):
            for target, made in targets.items():
                if told["to"] == GO_BACK:
                    put_back(target, made, mark)
                elif new_of(target, mark).exists():
                    new_of(target, mark).replace(target)
            for target in targets:
                _remove(new_of(target, mark))
                _remove(old_of(target, mark))
            note.remove()
    except OSError:
        return


def _read(note: Path) -> dict[str, Any]:
    """The note's text; nothing where it is none of ours."""
    import json

    try:
        told = json.loads(note.read_text(encoding="utf-8", errors="surrogateescape"))
        known = told["to"] in (FINISH, GO_BACK) and isinstance(told["first"], str) and isinstance(told["made"], dict)
        return told if known else {}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def _clear(path: Path) -> None:
    """Of what is left without a note the new texts go, and second names of what is still there: another old text may be the only one."""
    beside = _BESIDE.fullmatch(path.name)
    target = path.with_name(beside[1]) if beside else path
    if path.suffix in (".new", ".part") or (path.exists() and target.exists() and path.samefile(target)):
        _remove(path)


def _note(folder: Path, mark: str) -> Path:
    return folder / f".rigc.{mark}.set"


def _is_ours(name: str) -> bool:
    return any(each.fullmatch(name) for each in (_NOTE, _PART, _BESIDE))


def _mark(name: str) -> str:
    beside = _BESIDE.fullmatch(name)
    return beside[2] if beside else ""


def _is_dead(path: Path) -> bool:
    told = path.lstat()
    return max(told.st_mtime, told.st_ctime) < time.time() - _DEAD_AFTER_S


def _names(folder: Path) -> list[str]:
    try:
        return sorted(each.name for each in folder.iterdir())
    except OSError:
        return []


def _from(folder: Path, to: Path) -> str:
    return os.path.relpath(to, folder)


def _remove(path: Path) -> None:
    try:
        path.unlink(missing_ok=True)
    except OSError:
        return
