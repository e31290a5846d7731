"""Two sides -> the changes between them; a side that does not compile ends the command, its findings told."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from rigc.cli.screen import Screen
from rigc.cli.sides import Side
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.terminal import text
from rigc.files.reader import CachedReader
from rigc.loader import Unreadable

if TYPE_CHECKING:
    from rigc.model.rig import Head
    from rigc.reports.revision.changes.changes import Changes


class NoDiff(Exception):
    """A side can't be compared; its findings are told already. The text is one line that names the side."""


class Differences(NamedTuple):
    """The changes; what the new side's pages bear, and the hash of its sources."""

    changes: Changes
    head: Head
    hash: str


def differences(screen: Screen, old: Side, new: Side, effort: int | None, whole: bool) -> Differences:
    """Compiles both. Raises `NoDiff`."""
    from rigc.analysis.revision.compared.findings import all_findings, finding_changes
    from rigc.compile import compile_rig
    from rigc.gather import gather
    from rigc.model.rig import Rig
    from rigc.previous import Before, earlier
    from rigc.reports.revision.changes.changes import changes

    reader = CachedReader()
    seen: list[Before] = []

    def against(rig: Rig) -> Before:
        seen.append(earlier(gathered, rig, reader, effort, old))
        return seen[0]

    side = old
    try:
        gathered = gather(old, old.name, reader)
        side = new
        made = compile_rig(new, new.name, reader, effort=effort, against=against)
    except Unreadable as fault:
        raise _unreadable(screen, side, fault) from None
    if screen.verbose:
        screen.err("".join(f"read {each.shown(name)}\n" for each in (old, new) for name in each.names))
    before = seen[0].previous.results if seen else None
    if made.results is None:
        first = compile_rig(old, old.name, reader, effort=effort)
        if first.results is None:
            _not_compiled(screen, old, first.findings)
        raise _not_compiled(screen, new, made.findings)
    if before is None:
        raise _not_compiled(screen, old, seen[0].findings)
    findings = finding_changes(all_findings(before), all_findings(made.results))
    files = (old.shown(old.name), new.shown(new.name))
    told = changes(files, before.rig, made.results, findings, whole)
    return Differences(told, made.results.rig.head, made.hash)


def _unreadable(screen: Screen, side: Side, fault: Unreadable) -> NoDiff:
    fault.name = side.shown(fault.name)
    screen.err(f"{fault}\n" + (f"  do: {fault.help}\n" if fault.help else ""))
    return NoDiff(f"'{side.shown(side.name)}' can't be read, so nothing was compared")


def _not_compiled(screen: Screen, side: Side, findings: tuple[Diagnostic, ...]) -> NoDiff:
    screen.found(f"{text(findings, colour=screen.colour, shown=side.shown)}\n")
    return NoDiff(f"'{side.shown(side.name)}' has errors in its names or quantities, so nothing was compared")
