"""What a command told of a rig, kept: the next one of the same files, by the same rigc, tells it again and computes nothing."""

from __future__ import annotations

import hashlib
import json
import os
import sys
from functools import lru_cache
from pathlib import Path
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.passing import STOPPED
from rigc.diagnostics.saved import restored, saved
from rigc.files.cache import cache
from rigc.files.disk import Disk
from rigc.loader import Unreadable
from rigc.resources import folder
from rigc.source import Source

HERE = Path(__file__).parent.parent
SHIPPED = ("grammar", "templates")
"""Folders that what is told and written hangs on as on code; of the stock, each file that is used is a source."""


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
            code, files, told, more = json.loads(kept)
            if code != this_rigc():
                return None
            sources = []
            for (
                name,
                mark,
            ) in files:  # in the order in which they were read: a file is read for what those before it say
                sources.append(self._disk(name))
                if _mark(sources[-1]) != mark:
                    return None
            return restored(told, sources), more
        except (Unreadable, ValueError, TypeError, LookupError):
            return None

    def keep(self, findings: tuple[Diagnostic, ...], more: Any = None) -> None:
        """Keeps them for the next run, where they hang on nothing but the files that were read: not on one that could not be, nor on when someone
        interrupted it. `more` is what JSON can hold."""
        if self._disk.refused or any(finding.label == STOPPED for finding in findings):
            return
        sources = [self._disk(name) for name in self._disk.names]
        told = saved(findings, sources)
        if told is not None:
            files = [(source.name, _mark(source)) for source in sources]
            self._cache.write(self._name, json.dumps([this_rigc(), files, told, more]).encode("ascii"))


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
