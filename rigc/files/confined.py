"""The user's own templates run in a process of their own, which can open no file and is stopped at a limit.

The engine's sandbox (`rigc/output/sandbox.py`) is the first wall, this the second. The process gets texts and gives
texts: templates and documents go in, and what comes out is read as JSON and trusted in nothing. Time, files and (where the
system can) memory are limited within it; this side ends it where it does not heed its clock, and reads no more than a document may hold.
"""

from __future__ import annotations

import io
import json
import os
import pickle
import struct
import subprocess
import sys
from pathlib import Path
from threading import Timer
from types import TracebackType
from typing import Any

from rigc.output.layout import Layout
from rigc.output.own_templates import AddedSheet, OwnTemplates
from rigc.output.template_mistake import TemplateMistake
from rigc.output.templates import MOST_TEXT, Whole
from rigc.record import Record
from rigc.reports.content import Document
from rigc.traced.term import Term

START = "import sys; sys.path[:] = {path!r}; from rigc.files.confined_child import main; main()"
_STOPPED = "take out the loop that does not end, or the text that is repeated so often"


class Limits(Record):
    """For each document: seconds, and MB of memory; and how many seconds more a process has that does not heed the first."""

    seconds: float = 10.0
    memory_mb: int = 512
    patience: float = 5.0


STANDARD = Limits()


class Confined:
    """The process for one folder of templates. It starts when it is first asked, and ends with the `with` block."""

    def __init__(self, own: OwnTemplates, limits: Limits = STANDARD) -> None:
        self.own = own
        self.limits = limits
        self._process: subprocess.Popen[bytes] | None = None
        self._given: Whole | None = None

    def __str__(self) -> str:
        return self.own.folder

    def __enter__(self) -> Confined:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.end()

    def end(self) -> None:
        """End the process, whatever it does."""
        if self._process is not None:
            self._process.kill()
            self._process.communicate()
            self._process = None

    def added(self, ours: tuple[str, ...]) -> tuple[AddedSheet, ...]:
        """The sheets that the folder adds to `ours`; every template is read for it. Raises `TemplateMistake`."""
        return tuple(AddedSheet(**each) for each in self._ask("added", ours))

    def render(self, form: str, documents: tuple[Document, ...], paper: str, whole: Whole) -> str:
        """The documents as one text in a format, as its own renderer gives it. Raises `TemplateMistake`."""
        if self._process is None or self._given is not whole:
            self._ask("take", whole)
            self._given = whole
        return str(self._ask("render", form, documents, Layout(paper, self.own)))

    def _ask(self, *asked: Any) -> Any:
        if self._process is None:
            self._process = self._started()
        process = self._process
        timer = Timer(self.limits.seconds + self.limits.patience, process.kill)
        timer.start()
        try:
            answer = _answer(process, asked)
        finally:
            timer.cancel()
        if answer is None or "stopped" in answer:
            self.end()
            file, line = self._suspect(asked)
            message = "the template takes longer than any page does, or more memory"
            raise TemplateMistake(file, line, message, _STOPPED, True, self.own.text(file) or "")
        if "mistake" in answer:
            self.end()
            raise TemplateMistake(**answer["mistake"])
        if "bug" in answer:
            raise RuntimeError(answer["bug"])
        return answer["given"]

    def _started(self) -> subprocess.Popen[bytes]:
        kept = {name: os.environ[name] for name in ("SYSTEMROOT", "SYSTEMDRIVE") if name in os.environ}
        process = subprocess.Popen(
            [sys.executable, "-I", "-c", START.format(path=sys.path)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            env=kept | {"PYTHONHASHSEED": "0"},
            cwd=Path(sys.executable).anchor or None,
            close_fds=True,
        )
        assert process.stdin is not None
        _send(process, (self.limits.seconds, self.limits.memory_mb, self.own))
        return process

    def _suspect(self, asked: tuple[Any, ...]) -> tuple[str, int]:
        """Where to look when the process ended without a word: the template of the sheet, if it is one of the user's."""
        names = [f"{each.sheet.name}.j2" for each in asked[2]] if asked[0] == "render" else []
        for name in (*names, "sheet.j2", f"{asked[1]}.j2"):
            if self.own.text(self.own.path(name)) is not None:
                return self.own.path(name), 1
        return self.own.folder, 0


class _Plain(pickle.Pickler):
    """Sends a figure as the number that it is: how it came about stays here."""

    def reducer_override(self, value: Any) -> Any:
        return (float, (float(value),)) if isinstance(value, Term) else NotImplemented


def _send(process: subprocess.Popen[bytes], value: Any) -> None:
    assert process.stdin is not None
    held = io.BytesIO()
    _Plain(held).dump(value)
    data = held.getvalue()
    process.stdin.write(struct.pack(">Q", len(data)) + data)
    process.stdin.flush()


def _answer(process: subprocess.Popen[bytes], asked: Any) -> dict[str, Any] | None:
    """The answer as it came; None where the process has ended or says what is no answer."""
    assert process.stdout is not None
    try:
        _send(process, asked)
        head = process.stdout.read(8)
        size = struct.unpack(">Q", head)[0] if len(head) == 8 else -1
        if not 0 <= size <= 8 * MOST_TEXT:
            return None
        found = json.loads(process.stdout.read(size))
    except (OSError, ValueError):
        return None
    return found if isinstance(found, dict) else None
