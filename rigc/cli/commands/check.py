"""`rigc check`: what is wrong with these rigs? Writes nothing but rigc's own cache."""

from __future__ import annotations

import click

from rigc.cli.options import Given, disks, rig_options
from rigc.cli.screen import Screen


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...")
@rig_options
@click.pass_obj
def check(screen: Screen, paths: tuple[str, ...], given: Given) -> int:
    """Report what is wrong with rigs."""
    from rigc.cli.report import Report

    report = Report(screen, given, asked_for=True)
    for disk in disks(paths, given):
        report.check(disk)
    return report.finish()
