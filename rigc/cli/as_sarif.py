"""The findings of a run, rig by rig -> one SARIF document, with their mends as changes of the files on disk."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Kind
from rigc.diagnostics.explain import UnknownRule, all_kinds, page
from rigc.diagnostics.mend import Mend
from rigc.edit.change import Change
from rigc.edit.mended import CannotMend, changes
from rigc.files.disk import Disk
from rigc.output.findings.sarif import Found, render
from rigc.source import Source


def sarif(
    rigs: Sequence[tuple[Disk | None, tuple[Diagnostic, ...]]], unread: Sequence[str], code: int, reads: Any
) -> str:
    """The document. `unread` tells of each file that could not be read; `reads` parses a source."""
    found = [
        Found(findings, disk.shown if disk else str, _changes_in(disk, reads) if disk else _none)
        for disk, findings in rigs
    ]
    return render(found, unread, code, _pages())


def _pages() -> Callable[[Kind], str]:
    """What gives the page of a rule; a finding that was kept from an earlier run no longer has it."""
    kinds = all_kinds()

    def page_of(kind: Kind) -> str:
        try:
            return page(kinds, kind.name)
        except UnknownRule:
            return kind.rule

    return page_of


def _changes_in(disk: Disk, reads: Any) -> Callable[[Mend], dict[Source, list[Change]]]:
    sources = [disk(name) for name in disk.names]

    def changes_of(mend: Mend) -> dict[Source, list[Change]]:
        try:
            return changes(mend, sources, lambda source: reads.parse(source).file)
        except CannotMend:
            return {}

    return changes_of


def _none(_mend: Mend) -> dict[Source, list[Change]]:
    return {}
