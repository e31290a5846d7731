"""What a command told of a rig, kept: the next one of the same files, by the same rigc, tells it again and computes nothing."""

from __future__ import annotations

import hashlib
import json
import os
import re
import sys
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.passing import STOPPED
from rigc.diagnostics.saved import restored, saved
from rigc.files.cache import cache
from rigc.files.disk import Disk
from rigc.loader import Unreadable
from rigc.resources import folder
from rigc.source import Said, Source

HERE = Path(__file__).parent.parent
SHIPPED = ("grammar", "templates")
"""Folders that what is told and written hangs on as on code; of the stock, each file that is used is a source."""
_FEW_LINES = 50_000
"""With more, lines that say nothing count, too: a rig has at most so many."""


class Told:
    """The findings kept of the rig that a disk names, asked for in one way (`asked`: all that they hang on beside files and code), and
    what was kept `more` with them. What is kept for one `sort` of command is told by no other."""

    def __init__(self, disk: Disk, asked: str, sort: str = "told") -> None:
        self._disk = disk
        self._cache = cache()
        path = "\0".join((str(disk.folder), disk.name, asked))
        self._name = f"{sort}-{hashlib.sha256(path.encode('utf-8', 'surrogatepass')).hexdigest()[:24]}"

    def again(self) -> tuple[tuple[Diagnostic, ...], Any] | None:
        """What was kept when each file held what it holds now: the findings, and what else; None if that is not known. Reads the files."""
        kept = self._cache.read(self._name)
        if kept is None:
            return None
        try:
            head, _, told = kept.partition(b"\n")
            code, files, exact, more = json.loads(head)
            if code != this_rigc():
                return None
            sources: list[Source] = []
            said: list[Said] = []
            for name, mark in files:  # as they were read: a file is read for what those before it say
                sources.append(self._disk(name))
                if not exact:
                    said.append(Said(sources[-1].text))
                if (_mark(sources[-1]) if exact else _mark_of(said[-1])) != mark:
                    return None
            if not exact and not _short(sources):
                return None
            return restored(told.decode("ascii"), sources, said), more
        except (Unreadable, ValueError, TypeError, LookupError):
            return None

    def keep(self, findings: tuple[Diagnostic, ...], more: Any = None) -> None:
        """Keeps them for the next run, where they hang on nothing but the files that were read: not on one that could not be, nor on when someone
        interrupted it. `more` is what JSON can hold; it hangs on each byte of the files. Findings alone do not hang on lines that hold a remark or
        nothing, unless an error stands (a line that can't be read may end anywhere), or a text tells the number of a line."""
        if self._disk.refused or any(finding.label == STOPPED for finding in findings):
            return
        sources = [self._disk(name) for name in self._disk.names]
        told = None
        if more is None and _short(sources) and all(finding.level is not Level.ERROR for finding in findings):
            said = [Said(source.text) for source in sources]
            told = saved(findings, sources, said)
            marks = [_mark_of(each) for each in said]
        exact = told is None or _LINE_NUMBER.search(told) is not None
        if exact:
            told = saved(findings, sources)
            marks = [_mark(source) for source in sources]
        if told is not None:
            files = [(source.name, mark) for source, mark in zip(sources, marks, strict=True)]
            head = json.dumps([this_rigc(), files, exact, more])  # in one line, as all JSON of ours
            self._cache.write(self._name, f"{head}\n{told}".encode("ascii"))


_LINE_NUMBER = re.compile(r"\blines? \d")


def _short(sources: Sequence[Source]) -> bool:
    """Whether lines of these may come without being too many."""
    return sum(source.text.count("\n") for source in sources) < _FEW_LINES


def _mark_of(said: Said) -> str:
    return hashlib.sha256(said.text.encode("utf-8", "surrogatepass")).hexdigest()


def _mark(source: Source) -> str:
    return hashlib.sha256(source.data).hexdigest()


@lru_cache(maxsize=1)
def this_rigc() -> str:
    """What stands for this rigc, this Python and what is installed for it: when each of its files was written, and how long it is."""
    found = [sys.version, str(HERE)]
    for place in sys.path:
        if place.endswith(("site-packages", "dist-packages")) and Path(place).is_dir():
            found.append(f"{place} {Path(place).stat().st_mtime_ns}")
    todo = [str(HERE), *(str(beside) for name in SHIPPED if not (beside := folder(name)).is_relative_to(HERE))]
    while todo:
        with os.scandir(todo.pop()) as entries:
            for entry in entries:
                if entry.is_dir(follow_symlinks=False):
                    if entry.name != "__pycache__":
                        todo.append(entry.path)
                else:
                    state = entry.stat()
                    found.append(f"{entry.path} {state.st_mtime_ns} {state.st_size}")
    return hashlib.sha256("\n".join(sorted(found)).encode("utf-8", "surrogatepass")).hexdigest()
