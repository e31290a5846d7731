"""`show places` asked for more than the layout of a rig: several layouts, or one that keeps what stood in a revision before."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from rigc.cli.options import Given
from rigc.cli.report import Report
from rigc.cli.sides import Side, sides
from rigc.diagnostics.diagnostic import Level
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.loader import Unreadable


def alternatives_shown(report: Report, disk: Disk, count: int) -> tuple[Any, ...]:
    """The sheet of so many layouts; none where the rig has errors in names or quantities, which are told."""
    rig = _read(report, disk, CachedReader())
    if rig is None:
        return ()
    from rigc.analysis.laying.alternatives import alternatives
    from rigc.reports.laying.choice_sheets import alternatives_sheet

    return (alternatives_sheet(alternatives(rig, count, report.effort)),)


def proved_shown(report: Report, disk: Disk, work: float) -> tuple[Any, ...]:
    """The sheet of a layout with what the solver proves of it."""
    from rigc.analysis.laying.search.solver.model import is_installed

    if not is_installed():
        raise click.ClickException("--prove needs a solver: pip install 'rigc[solver]'")
    rig = _read(report, disk, CachedReader())
    if rig is None:
        return ()
    from rigc.analysis.deck.unplaced import as_stated
    from rigc.analysis.laying.choices.task import task_of
    from rigc.analysis.laying.proved_places import proved_places
    from rigc.reports.laying.choice_sheets import proved_sheet

    task = task_of(as_stated(rig))
    if task is None or not task.free:
        raise click.ClickException("nothing is open: every place is stated")
    return (proved_sheet(proved_places(task, report.effort, work)),)


def kept_shown(report: Report, disk: Disk, typed: str, given: Given) -> tuple[Any, ...]:
    """The sheet of the layout that keeps what stood in a file or in a revision of git; what can't be read ends the command."""
    from rigc.gather import gather
    from rigc.previous import earlier

    reader = CachedReader()
    rig = _read(report, disk, reader)
    if rig is None:
        return ()
    old = _side(disk, typed, given)
    try:
        before = earlier(gather(old, old.name, reader), rig, reader, report.effort, old).previous.results
    except Unreadable as fault:
        fault.name = old.shown(fault.name)
        raise click.ClickException(str(fault)) from None
    if before is None:
        raise click.ClickException(f"'{old.shown(old.name)}' has errors in its names or quantities: nothing to keep")
    from rigc.analysis.laying.kept_places import kept_places
    from rigc.reports.laying.choice_sheets import kept_sheet

    return (kept_sheet(kept_places(rig, before.rig, report.effort), typed),)


def _side(disk: Disk, typed: str, given: Given) -> Side:
    path = disk.shown(disk.name)
    is_file = typed.endswith(".rig") or Path(typed).exists()
    return sides((typed, path), None if is_file else 1, given)[0]


def _read(report: Report, disk: Disk, reader: CachedReader) -> Any:
    """The rig without chosen places; what is wrong with its text is told."""
    from rigc.compile import read_rig

    try:
        read = read_rig(disk, disk.name, reader)
    except Unreadable as fault:
        report.unreadable_file(disk, fault)
        return None
    report.told(disk, read.findings)
    return None if any(each.level is Level.ERROR for each in read.findings) else read.resolved.rig
