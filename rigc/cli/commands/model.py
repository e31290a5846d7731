"""`rigc model`: the whole computed design as data."""

from __future__ import annotations

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import Given, disks, rig_options
from rigc.cli.screen import Screen


@click.command()
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--schema", is_flag=True, help="Print the JSON Schema of it instead; no rig is read.")
@rig_options
@click.pass_obj
def model(screen: Screen, path: str | None, schema: bool, given: Given) -> int:
    """Print the whole computed design as JSON.

    It holds what the rig says and what was chosen, every figure with its value, its unit and the name that `rigc why` takes, and
    the findings. Printed even when the rig has errors (exit code 1). `version` counts up when a reader would go wrong.
    """
    if schema:
        from rigc.output.design.model_schema import render

        screen.out(render())
        return 0
    from rigc.cli import seam
    from rigc.cli.report import Report

    (disk,) = disks([path] if path else [], given)
    return Report(screen, given).answered(disk, "model", lambda result: seam.model(result, disk.shown))
