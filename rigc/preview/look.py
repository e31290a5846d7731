"""Look: a rig's files as they were at one time, and what follows from them."""

from __future__ import annotations

from functools import cached_property
from pathlib import Path

from rigc.compile import Compiled, Read
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.editor.computed import Computed, computed
from rigc.editor.draft import Draft
from rigc.loader import Loader
from rigc.proved import Bench
from rigc.source import Source
from rigc.syntax.parsed import Reader


class Look:
    """`number` counts looks; `findings` are at first those without advice, later with mends that were tried; `lacking` are files that were
    asked for in vain."""

    def __init__(
        self, number: int, load: Loader, reader: Reader, read: Read, made: Compiled, lacking: set[Path]
    ) -> None:
        self.number = number
        self.load = load
        self.read = read
        self.made = made
        self.draft = Draft(read)
        self.findings: tuple[Diagnostic, ...] = made.findings
        self.lacking = lacking
        self.own = read.gathered.sources[0]
        self._reader = reader

    @property
    def bench(self) -> Bench:
        """Where changes of the text are tried; a new one each time, for it keeps what it has parsed."""
        return Bench(self.made, self.load, self.own.name, self._reader)

    @cached_property
    def computed(self) -> Computed | None:
        """None where a line, a name or a quantity is wrong."""
        return computed(self.made)

    @property
    def hash(self) -> str:
        """That of the bytes that were read."""
        return self.made.hash

    def source(self, name: str) -> Source | None:
        """The source of that name, if it was read."""
        return next((each for each in self.made.sources if each.name == name), None)
