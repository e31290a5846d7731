"""`rigc why`: how did a value come about?"""

from __future__ import annotations

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import Given, disks, rig_options
from rigc.cli.screen import Screen


@click.command()
@click.argument("name", metavar="NAME[.FIELD]")
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--to", type=click.Choice(["text", "json"]), default="text", help="The format.")
@click.option("--deep", is_flag=True, help="Also what each input rests on, down to the source.")
@rig_options
@click.pass_obj
def why(screen: Screen, name: str, path: str | None, to: str, deep: bool, given: Given) -> int:
    """Tell how a value came about.

    NAME is a lead's number, a unit, a supply, an outlet (mill5.o2), an instrument, a stock or `rig`; without a FIELD
    all its values are listed. Exit code 2 if there is no such value.
    """
    from rigc.cli import seam
    from rigc.cli.report import NO_ANSWER, Report

    report = Report(screen, given)
    if report.uses_stdout:
        raise click.UsageError("standard output is for the reason; give --findings a file")
    (disk,) = disks([path] if path else [], given)
    result = report.compile(disk)
    told = None if result is None else seam.why(result, name, to, deep, disk.shown)
    if told is not None:
        screen.out(told)
    elif result is not None:
        screen.err("nothing is computed while names or quantities are wrong\n")
    code = report.finish()
    return NO_ANSWER if told is None else code
