"""`rigc rename`: another name for a declared thing, everywhere."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import ROOT_HELP, Given, disks
from rigc.cli.screen import Screen
from rigc.loader import STOCK

if TYPE_CHECKING:
    from rigc.cli.report import Report
    from rigc.files.disk import Disk
    from rigc.gather import Gathered


@click.command()
@click.argument("old")
@click.argument("new")
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--kind", default="", metavar="KIND", help="Where several things bear the name: unit, cable, ...")
@click.option("--diff", "as_diff", is_flag=True, help="Write nothing; print what would change.")
@click.option("--root", type=click.Path(exists=True, file_okay=False), help=ROOT_HELP)
@click.pass_obj
def rename(screen: Screen, old: str, new: str, path: str | None, kind: str, as_diff: bool, root: str | None) -> int:
    """Rename what is declared as OLD to NEW, in the rig at PATH and all files that it uses.

    A unit or a supply keeps its old name in a `was` clause, so that a comparison of revisions knows it again; the
    clause is removed when the old name comes back. Texts in quotes and comments stay.
    """
    from pathlib import Path

    from rigc.cli.report import NO_ANSWER, Report
    from rigc.edit.rename import is_name

    given = Given(Path(root) if root else None, "stdin.rig", None, (), "error")
    if path == "-":
        raise click.UsageError("rename changes files; name one")
    if not is_name(new):
        raise click.UsageError(f"'{new}' is no name: lower case, digits and single hyphens are, a letter first")
    if old == new:
        raise click.UsageError(f"'{old}' is its name already")
    report = Report(screen, given)
    (disk,) = disks([path] if path else [], given)
    found = report.whole(disk)
    if found is None:
        return report.finish() and NO_ANSWER
    return _renamed(screen, report, disk, found[0], (old, new, kind), as_diff)


def _renamed(
    screen: Screen, report: Report, disk: Disk, gathered: Gathered, words: tuple[str, str, str], as_diff: bool
) -> int:
    from rigc.cli.written import put
    from rigc.edit.rename import rename as change
    from rigc.files.reader import CachedReader

    result = change(gathered, CachedReader().reserved, *words)
    if result.refused is not None:
        report.add(disk, (result.refused,))
        return report.finish()
    put(screen, disk, result.texts, as_diff, "nothing changed")
    shared = [disk.shown(name) for name in result.texts if name != disk.name and not name.startswith(STOCK)]
    if shared and not as_diff:
        screen.progress(f"other rigs that use {', '.join(shared)} may still say '{words[0]}'\n")
    return 0
