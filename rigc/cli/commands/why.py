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
    from rigc.cli.report import Report

    (disk,) = disks([path] if path else [], given)
    return Report(screen, given).answered(disk, "reason", lambda result: seam.why(result, name, to, deep, disk.shown))
