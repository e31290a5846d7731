"""History: what was written, so that it can be taken back; but never over what someone else wrote since."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from rigc.record import Record

MOST = 200
"""So many steps can be taken back."""

Write = Callable[[dict[Path, bytes]], object]
Bytes = Callable[[Path], bytes | None]


class Step(Record):
    """One change: what it was in words, and each file's bytes before and after."""

    words: str
    files: dict[Path, tuple[bytes, bytes]]

    @property
    def back(self) -> Step:
        """The change that takes it back."""
        return Step(self.words, {path: (new, old) for path, (old, new) in self.files.items()})


class NothingToDo(Exception):
    """Nothing was written, or nothing taken back."""


class EditedSince(Exception):
    """A file holds something else than what was written last; the text names it."""


class History:
    """Steps that were taken, and steps that were taken back."""

    def __init__(self, write: Write, bytes_of: Bytes) -> None:
        self._write, self._bytes_of = write, bytes_of
        self.done: list[Step] = []
        self.undone: list[Step] = []

    def take(self, step: Step) -> None:
        """Writes a new step. Raises `EditedSince`, and what writing raises."""
        self._put(step)
        self.done.append(step)
        self.undone.clear()
        del self.done[:-MOST]

    def undo(self) -> Step:
        """Takes the last step back. Raises `NothingToDo`, `EditedSince`, and what writing raises."""
        return self._turn(self.done, self.undone, "nothing was moved here that could be taken back")

    def redo(self) -> Step:
        """Does again what was taken back last; raises as `undo`."""
        return self._turn(self.undone, self.done, "nothing was taken back")

    def _turn(self, these: list[Step], others: list[Step], none: str) -> Step:
        if not these:
            raise NothingToDo(none)
        step = these[-1].back
        self._put(step)
        these.pop()
        others.append(step)
        return step

    def _put(self, step: Step) -> None:
        for path, (old, _) in step.files.items():
            if self._bytes_of(path) != old:
                raise EditedSince(f"'{path.name}' was edited since, and nothing is written over that")
        self._write({path: new for path, (_, new) in step.files.items()})
