"""Parsed: what reading one file gave; Reader: what compiling asks of whoever turns sources into it."""

from __future__ import annotations

from typing import Protocol

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax.nodes import File


class Parsed(Record):
    """A file as written: what could be read, what was wrong, and the stretches that were passed over."""

    file: File
    findings: tuple[Diagnostic, ...]
    skipped: tuple[Span, ...]


class Lent(Parsed):
    """A file as it was read: what a change of its text does not touch is handed on as it is, with its places in the text as it was."""


class Reader(Protocol):
    """Parses sources. Where what was read `near` a source is given, that is only tried, and never takes the place of a file. `reserved` are the words of the language that can't name a declared thing."""

    @property
    def reserved(self) -> frozenset[str]: ...

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed: ...
