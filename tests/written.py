"""Rigs written in the tests themselves, and examples with some of their words changed: their results."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from cases import READER, ROOT

from rigc.analysis.results import Results
from rigc.compile import Compiled, compile_rig
from rigc.files.disk import Disk


def written(text: str) -> Results:
    """What follows from statements; language, rig block and generic stock are put before them."""
    return _results(compiled_written(text))


def compiled_written(text: str) -> Compiled:
    """The same, compiled, with its findings."""
    stock = "".join(f'use "stock/{name}.rig"\n' for name in ("plugs", "cables", "strips", "premade"))
    head = f'language 1\n{stock}rig written "Written (invented)" {{\n  revision A 2026-03-02\n}}\n'
    return _compiled(ROOT / "written.rig", head + text)


def changed(path: str, *changes: tuple[str, str]) -> Results:
    """What follows from a rig of the project in which each first text, found exactly once, is replaced by the second."""
    return _results(compiled_with(path, *changes))


def compiled_with(path: str, *changes: tuple[str, str]) -> Compiled:
    """The rig with those changes, compiled."""
    file = ROOT / path
    text = file.read_text("utf-8")
    for old, new in changes:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {path}"
        text = text.replace(old, new)
    return _compiled(file, text)


def compiled_text(path: str, change: Callable[[str], str]) -> Compiled:
    """The rig with its whole text changed, compiled."""
    file = ROOT / path
    return _compiled(file, change(file.read_text("utf-8")))


def _compiled(file: Path, text: str) -> Compiled:
    disk = Disk(file, root=ROOT, given=text.encode())
    return compile_rig(disk, disk.name, READER)


def _results(made: Compiled) -> Results:
    assert made.results is not None, [finding.message for finding in made.findings]
    return made.results
