"""`rigc check`: what is wrong with these rigs? Writes nothing but rigc's own cache."""

from __future__ import annotations

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import Given, rig_options
from rigc.cli.screen import Screen


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...", shell_complete=rigs)
@rig_options
@click.pass_obj
def check(screen: Screen, paths: tuple[str, ...], given: Given) -> int:
    """Report what is wrong with rigs.

    PATH may be a folder: all rigs below it. Exit code 0 when nothing is found of the level --fail-on, 1 when something is,
    2 when a file can't be read; what was accepted does not count.
    """
    from rigc.cli.report import Report
    from rigc.cli.rigs_below import rig_disks

    report = Report(screen, given, asked_for=True)
    for disk in rig_disks(paths, given):
        report.check(disk)
    return report.finish()
