"""`rigc pin`: what the compiler chose becomes statements of the rig's file."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import Given, disks, listed, rig_options
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.cli.report import Report
    from rigc.files.disk import Disk


@click.command()
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--diff", "as_diff", is_flag=True, help="Write nothing; print what would change.")
@click.option("--only", multiple=True, metavar="KIND,...", help="Only places, outlets, leads (numbers) or plugs.")
@rig_options
@click.pass_obj
def pin(screen: Screen, path: str | None, as_diff: bool, only: tuple[str, ...], given: Given) -> int:
    """Write what rigc chose into the rig as ordinary statements.

    Places, outlets, lead numbers and plug kinds are added to the named file; nothing else in it moves, no computed
    number changes. To unpin, delete the lines. `-` prints the pinned text.
    """
    from rigc.cli.report import NO_ANSWER, Report
    from rigc.edit.pin import KINDS

    report = Report(screen, given)
    kinds = listed(only, KINDS, "kind") if only else KINDS
    (disk,) = disks([path] if path else [], given)
    if (as_diff or disk.is_given) and report.uses_stdout:
        raise click.UsageError("standard output is for the text; give --findings a file")
    told = _pin(screen, report, disk, kinds, as_diff)
    code = report.finish()
    return code if told else NO_ANSWER


def _pin(screen: Screen, report: Report, disk: Disk, kinds: tuple[str, ...], as_diff: bool) -> bool:
    from rigc.cli.written import put
    from rigc.edit.cannot_pin import CannotPin
    from rigc.edit.pin import pinned
    from rigc.files.reader import CachedReader

    result = report.compile(disk)
    if result is None:
        return False
    results = getattr(result, "results", None)
    if results is None:
        screen.err("nothing is chosen while names or quantities are wrong\n")
        return False
    source = disk(disk.name)
    try:
        text = pinned(CachedReader().parse(source).file, results, kinds)
    except CannotPin as fault:
        raise click.ClickException(str(fault)) from None
    put(screen, disk, {source.name: text}, as_diff, "nothing was left to pin")
    return True
