"""Preview: one rig on the disk as its pages see it. It follows saves, keeps the last good drawing, and writes moves back."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from pathlib import Path
from threading import Condition, RLock

from rigc.analysis.results import Beside
from rigc.compile import Compiled, compile_rig, read_rig
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.edit.move import CannotMove
from rigc.editor.reading import KeptReader
from rigc.editor.shelf import Shelf, path_of
from rigc.files.kept import kept
from rigc.files.reading import read_source
from rigc.files.writing import write_all
from rigc.loader import STOCK, Loader, Unreadable, used_name
from rigc.preview.effects import Effect, effect
from rigc.preview.history import History, Step
from rigc.preview.look import Look
from rigc.proved import Bench
from rigc.syntax import nodes
from rigc.syntax.parsed import Reader

OPENED, FOLLOWED = "opened", "followed"
"""What can be set beside the rig of now, besides what the command names."""


class Stale(Exception):
    """The files are not what the page has seen: it must look again first."""


class Preview:
    """`now` is the last look (None: the file can't be read, `fault` says why), `good` the last one that could be drawn.

    `lit` is the line that an editor has lit last, its file by its name, and `lights` counts how often one did. `beside` gives what the command sets beside it, by its words. All is asked under `lock`; `news` is told when anything is new.
    """

    def __init__(self, rig: Path, reader: Reader, beside: Mapping[str, Callable[[], Compiled]] | None = None) -> None:
        self.rig = Path(os.path.normpath(Path.cwd() / rig))
        self.lock, self.news = RLock(), Condition()
        self.number = 0
        self.lights = 0
        self.lit = ("", 0)
        self.now: Look | None = None
        self.good: Look | None = None
        self.fault: Unreadable | None = None
        self.history = History(write_all, self._bytes_of)
        self._first: Look | None = None
        self._kept = kept()
        self._given = dict(beside or {})
        self._made_beside: dict[tuple[str, str], Compiled] = {}
        self._shelf = Shelf()
        self._reader, self._apart = KeptReader(reader), KeptReader(reader)
        self.refresh()

    @property
    def broken(self) -> bool:
        """Whether what is drawn is of an older state of the files."""
        return self.now is None or self.now is not self.good

    def refresh(self) -> bool:
        """Reads and compiles what has changed on the disk; whether anything had."""
        with self.lock:
            load = self._shelf.loader(self.rig)
            if self.now is not None and self._same(self.now, load):
                return False
            try:
                read = read_rig(load, self.rig.name, self._reader)
            except Unreadable as fault:
                return self._failed(fault)
            self.fault = None
            last = Beside(None if self.good is None else self.good.made.results, goes_on=True)
            made = compile_rig(load, self.rig.name, self._reader, read=read, advice=False, kept=self._kept, beside=last)
            there = {path_of(self.rig, source.name) for source in made.sources}
            self.now = Look(self.number + 1, load, self._reader, read, made, self._shelf.asked[self.rig] - there)
            if made.results is not None:
                self.good = self.now
                self._first = self._first or self.now
            self._tell()
            return True

    def failed(self, bug: Exception) -> None:
        """What compiling raised is a bug of ours: it is told like a file that can't be read, until one changes."""
        what = " ".join(f"{type(bug).__name__}: {bug}".split())[:200]
        with self.lock:
            self._failed(Unreadable(self.rig.name, f"a bug in rigc, not in the rig: {what}"))

    def _failed(self, fault: Unreadable) -> bool:
        if self.now is None and self.fault is not None and str(self.fault) == str(fault):
            return False
        self.now, self.fault = None, fault
        self._tell()
        return True

    def advise(self) -> None:
        """Seeks the mends of what was found, and tries them. It takes its time, holds nobody up, and stops when the files change."""
        look = self.now
        if look is None or not any(each.level <= Level.WARNING and each.accepted is None for each in look.findings):
            return
        name = look.own.name
        made = compile_rig(look.load, name, self._apart, read=look.read)
        bench = Bench(made, look.load, name, self._apart)
        found: list[Diagnostic] = []
        for each in made.findings:
            if self.now is not look:
                return
            found.append(bench.proved(each))
        with self.lock:
            if self.now is look:
                look.findings = tuple(found)
                self._tell()

    @property
    def watched(self) -> set[Path]:
        """The files that the rig was read from, and those that it asked for in vain."""
        return {self.rig, *self._shelf.asked.get(self.rig, ())}

    def path(self, name: str) -> Path | None:
        """Where a source of the rig is; None for what is none, or ships with rigc."""
        look = self.now or self.good
        known = look is not None and look.source(name) is not None and not name.startswith(STOCK)
        return path_of(self.rig, name) if known else None

    def light(self, path: Path, line: int) -> bool:
        """Tells the pages which line an editor is at; whether the file is one of the rig's."""
        look = self.now or self.good
        names = [] if look is None else [each.name for each in look.made.sources]
        here = os.path.realpath(path)
        name = next((each for each in names if os.path.realpath(path_of(self.rig, each)) == here), None)
        if name is None:
            return False
        with self.news:
            self.lit = (name, line)
            self.lights += 1
            self.news.notify_all()
        return True

    def try_move(self, thing: str, x_mm: float, y_mm: float, seen: str) -> Effect:
        """What a move would do to the rig that the page has `seen` (its hash). Raises `Stale` and `CannotMove`."""
        with self.lock:
            look = self.good
            if look is None or self.broken:
                raise CannotMove("the file is broken: mend it first")
            if look.hash != seen:
                raise Stale
            return effect(look, thing, x_mm, y_mm)

    def move(self, thing: str, x_mm: float, y_mm: float, seen: str) -> Effect:
        """Writes a move into the source. Raises `Stale`, `CannotMove`, `EditedSince` and `NotWritable`."""
        with self.lock:
            self.refresh()
            found = self.try_move(thing, x_mm, y_mm, seen)
            assert self.good is not None
            files = {}
            for name, text in found.texts.items():
                old, new = self.good.load(name).data, text.encode("utf-8", "surrogatepass")
                if old != new:
                    files[path_of(self.rig, name)] = (old, new)
            if files:
                self.history.take(Step(f"{thing} to {x_mm:g}, {y_mm:g} mm", files))
                self.refresh()
            return found

    def undo(self, again: bool = False) -> Step:
        """Takes the last move back, or makes it `again`. Raises as `History.undo`."""
        with self.lock:
            step = self.history.redo() if again else self.history.undo()
            self.refresh()
            return step

    def choices(self) -> dict[str, str]:
        """What can be set beside the rig of now: a key, and words for it."""
        found = {OPENED: "as it was when this page was first served"}
        follows = self._follows()
        if follows is not None:
            found[FOLLOWED] = f"revision {follows.letter}, which it follows"
        return found | {key: key for key in self._given}

    def beside(self, key: str) -> Compiled | None:
        """One of these choices, compiled; None where there is no such. Raises `Unreadable`."""
        look, follows = self._first if key == OPENED else self.good, self._follows()
        if look is None or (key not in (*self._given, OPENED) and (key != FOLLOWED or follows is None)):
            return None
        at = (key, look.hash if key == FOLLOWED else "")
        if at not in self._made_beside:
            if key == OPENED:
                self._made_beside[at] = compile_rig(look.load, look.own.name, self._apart, read=look.read, advice=False)
            elif key in self._given:
                self._made_beside[at] = self._given[key]()
            elif follows is not None:
                name = used_name(follows.span.source.name, follows.path.value)
                self._made_beside[at] = compile_rig(look.load, name, self._reader, advice=False)
        return self._made_beside[at]

    def _same(self, look: Look, load: Loader) -> bool:
        """Whether all files that were read are as they were, and none has come that was asked for in vain."""
        try:
            return all(load(source.name) is source for source in look.made.sources) and not any(
                self._comes(load, path) for path in look.lacking
            )
        except Unreadable:
            return False

    def _comes(self, load: Loader, path: Path) -> bool:
        try:
            load(os.path.relpath(path, self.rig.parent).replace(os.sep, "/"))
        except Unreadable:
            return False
        return True

    def _follows(self) -> nodes.Follows | None:
        if self.good is None:
            return None
        heads = [each for each in self.good.read.gathered.statements if isinstance(each, nodes.Rig)]
        return next((item for head in heads for item in head.items if isinstance(item, nodes.Follows)), None)

    def _bytes_of(self, path: Path) -> bytes | None:
        try:
            return read_source(path, path.name).data
        except Unreadable:
            return None

    def _tell(self) -> None:
        with self.news:
            self.number += 1
            self.news.notify_all()
