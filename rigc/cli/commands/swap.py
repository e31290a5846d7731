"""`rigc swap`: can this substitute stand in, on the board as it stands?"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import EFFORT_HELP, ROOT_HELP, STDIN_HELP, Given, disks
from rigc.cli.screen import Screen
from rigc.output.layout import PAPERS

if TYPE_CHECKING:
    from rigc.gather import Gathered
    from rigc.model.rig import Rig

YES, NO, NO_ANSWER = 0, 1, 2
FORMS = ("text", "md", "html", "json")


@click.command()
@click.argument("unit")
@click.argument("by")
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--to", type=click.Choice(FORMS), default="text", help="The format.")
@click.option("--note", is_flag=True, help="Print the statements that record the swap, to paste and to fill in.")
@click.option("--paper", type=click.Choice(PAPERS), default="a4", help="The paper of the HTML page.")
@click.option(
    "--root",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    help=ROOT_HELP,
)
@click.option("--stdin-name", default="stdin.rig", metavar="PATH", help=STDIN_HELP)
@click.option("--effort", type=click.IntRange(min=0), metavar="N", help=EFFORT_HELP)
@click.pass_obj
def swap(
    screen: Screen,
    unit: str,
    by: str,
    path: str | None,
    to: str,
    note: bool,
    paper: str,
    root: Path | None,
    stdin_name: str,
    effort: int | None,
) -> int:
    """Tell whether BY can stand in for UNIT, before any plug goes in.

    BY is a unit that the rig at PATH, or a file that it uses, declares. It is tried at UNIT's front-left corner, on its outlet
    and with its leads. The first line is the verdict: yes, with or without work (exit code 0); no (1); not known, where
    a fact that decides is not stated (2).
    """
    from rigc.cli.report import Report

    given = Given(root, stdin_name, None, (), "error", effort)
    report = Report(screen, given)
    (disk,) = disks([path] if path else [], given)
    found = report.whole(disk, "rigc swap: nothing is tried while the rig has these errors\n")
    if found is None:
        return report.finish() and NO_ANSWER
    _known(found[1], unit, by)
    return _answered(screen, found, (unit, by), effort, _statements(found[1], unit, by) if note else None, to, paper)


def _answered(
    screen: Screen,
    found: tuple[Gathered, Rig],
    names: tuple[str, str],
    effort: int | None,
    note: str | None,
    to: str,
    paper: str,
) -> int:
    """Tries the substitute; prints the page, or in its place the `note`."""
    from rigc.analysis.revision.substitute.trial import try_out
    from rigc.cli.swap_forms import rendered
    from rigc.files.reader import CachedReader
    from rigc.reports.revision.swap.page import swap_page
    from rigc.source import Span

    gathered, rig = found
    trial = try_out(gathered.statements, *names, CachedReader(), Span(gathered.sources[0], 0, 0), effort)
    if isinstance(trial, str):
        screen.err(f"rigc swap: {trial}\n")
        return NO_ANSWER
    page = swap_page(trial)
    screen.out(rendered(page, rig, gathered.sources, to, paper) if note is None else note)
    code = {"no": NO, "not known": NO_ANSWER}.get(page.answer, YES)
    if code or note is not None:
        screen.err(f"rigc swap: {page.verdict}\n")
    return code


def _known(rig: Rig, unit: str, by: str) -> None:
    """Both must be declared, and as units: what a supply or an instrument is exchanged for is a matter of a revision."""
    from rigc.diagnostics.near import nearest

    for name in (unit, by):
        if name in rig.units:
            continue
        if name in rig.things:
            kind = rig.things[name].kind
            advice = "declare the other one in the next revision, and compare the two with `rigc diff`"
            raise click.UsageError(f"'{name}' is declared as {kind}, and swap exchanges units; {advice}")
        near = nearest(name, rig.units)
        raise click.UsageError(
            f"nothing declares a unit '{name}'; "
            + (f"did you mean '{near}'?" if near else "declare it with its facts first")
        )


def _statements(rig: Rig, unit: str, by: str) -> str:
    """What records the swap; the day and the names in capitals are to be filled in, and nothing compiles before."""
    number = max((note.number for note in rig.field_notes), default=0) + 1
    return (
        f'field-note {number} YYYY-MM-DD "{unit} out, {by} in: WHY AND WHERE" by "WHO"\n'
        f"as-built {rig.head.letter} {{\n  swap {unit} for {by} field-note {number}\n}}\n"
    )
