"""Rigs written in the tests themselves, and examples with some of their words changed: their results."""

from __future__ import annotations

from collections.abc import Callable

from cases import ROOT, compiled_as, results_as

from rigc.analysis.results import Results
from rigc.compile import Compiled


def written(text: str) -> Results:
    """What follows from statements; language, rig block and generic stock are put before them."""
    return results_as(ROOT / "written.rig", _with_head(text).encode())


def compiled_written(text: str) -> Compiled:
    """The same, compiled, with its findings."""
    return compiled_as(ROOT / "written.rig", _with_head(text).encode())


def _with_head(text: str) -> str:
    stock = "".join(f'use "stock/{name}.rig"\n' for name in ("plugs", "cables", "strips", "premade"))
    head = f'language 1\n{stock}rig written "Written (invented)" {{\n  revision A 2026-03-02\n}}\n'
    return head + text


def changed(path: str, *changes: tuple[str, str]) -> Results:
    """What follows from a rig of the project in which each first text, found exactly once, is replaced by the second."""
    return results_as(ROOT / path, _with_changes(path, changes).encode())


def compiled_with(path: str, *changes: tuple[str, str]) -> Compiled:
    """The rig with those changes, compiled."""
    return compiled_as(ROOT / path, _with_changes(path, changes).encode())


def _with_changes(path: str, changes: tuple[tuple[str, str], ...]) -> str:
    text = (ROOT / path).read_text("utf-8")
    for old, new in changes:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {path}"
        text = text.replace(old, new)
    return text


def compiled_text(path: str, change: Callable[[str], str]) -> Compiled:
    """The rig with its whole text changed, compiled."""
    file = ROOT / path
    return compiled_as(file, change(file.read_text("utf-8")).encode())
