"""`rigc diff`: what differs between two revisions of a rig, and who has to do what."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import EFFORT_HELP, ROOT_HELP, Given
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.cli.differences import Differences
    from rigc.reports.revision.changes.changes import Changes

WORK = ("rewire", "repower", "redrill", "relabel", "paper")
FORMS = ("text", "md", "html", "json")
NO, NO_ANSWER = 1, 2
_BEHIND = "rigc.diff.behind"


class _WithDashes(click.Command):
    """A command that knows how many of its words stand behind `--`, which click drops."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        if "--" in args:
            ctx.meta[_BEHIND] = len(args) - args.index("--") - 1
        return super().parse_args(ctx, args)


@click.command(cls=_WithDashes)
@click.argument("words", nargs=-1, metavar="OLD NEW | REV[..REV] -- PATH", shell_complete=rigs)
@click.option("--to", type=click.Choice(FORMS), default="text", help="The format.")
@click.option("--brief", is_flag=True, help="One line a thing.")
@click.option("--all", "whole", is_flag=True, help="Also what is held back (no work follows), and details.")
@click.option(
    "--fail-on", type=click.Choice(WORK), help="Exit with 1 if this kind of work, or a bigger one, is needed."
)
@click.option("--exit-code", is_flag=True, help="Exit with 1 if anything differs.")
@click.option("--limit", type=click.IntRange(min=1), metavar="N", help="At most N bytes; what is cut off is counted.")
@click.option(
    "--root",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    help=ROOT_HELP,
)
@click.option("--effort", type=click.IntRange(min=0), metavar="N", help=EFFORT_HELP)
@click.pass_context
def diff(
    ctx: click.Context,
    words: tuple[str, ...],
    to: str,
    brief: bool,
    whole: bool,
    fail_on: str | None,
    exit_code: bool,
    limit: int | None,
    root: Path | None,
    effort: int | None,
) -> int:
    """Tell what differs between two revisions of a rig, and the work.

    Two files, or a revision of git against the file as it is, or two revisions of git; what the rig uses is read from the
    same revision, and neither the files nor the index are touched. The computed designs are compared. The kinds of work,
    the biggest first: rewire, repower, redrill, relabel, paper. Exit code 2 if a side has errors in its names or
    quantities.
    """
    from rigc.cli.differences import NoDiff, differences
    from rigc.cli.sides import sides

    screen: Screen = ctx.obj
    old, new = sides(words, ctx.meta.get(_BEHIND), Given(root, "stdin.rig", None, (), "error", effort))
    try:
        found = differences(screen, old, new, effort, whole)
    except NoDiff as fault:
        screen.err(f"rigc diff: {fault}\n")
        return NO_ANSWER
    screen.out(_fitted(found, to, brief, limit))
    why = _why_no(found.changes, fail_on, exit_code)
    if why:
        screen.err(f"rigc diff: {why}\n")
    return NO if why else 0


def _why_no(changes: Changes, fail_on: str | None, exit_code: bool) -> str:
    if fail_on is not None:
        asked = {work: len(changes.of_work(work)) for work in WORK[: WORK.index(fail_on) + 1]}
        found = ", ".join(
            f"{count} to {work}" if work != "paper" else f"{count} on paper" for work, count in asked.items() if count
        )
        if found:
            return f"--fail-on {fail_on}: {found}"
    return "the two sides differ" if exit_code and not changes.empty else ""


def _fitted(found: Differences, form: str, brief: bool, limit: int | None) -> str:
    """The text with as many things as fit into so many bytes, those that take least work cut off first."""
    text = _rendered(found, form, brief, found.changes)
    if limit is None or _size(text) <= limit:
        return text
    low, high = 0, len(found.changes.all) - 1
    least = _rendered(found, form, brief, found.changes.only(0))
    if high < 0 or _size(least) > limit:
        raise click.UsageError(
            f"--limit {limit} is too small: what has to be done takes {_size(least)} bytes as {form}"
        )
    while low < high:
        middle = (low + high + 1) // 2
        fits = _size(_rendered(found, form, brief, found.changes.only(middle))) <= limit
        low, high = (middle, high) if fits else (low, middle - 1)
    return _rendered(found, form, brief, found.changes.only(low))


def _size(text: str) -> int:
    return len(text.encode("utf-8", "backslashreplace"))


def _rendered(found: Differences, form: str, brief: bool, changes: Changes) -> str:
    if form == "json":
        from rigc.output.design.changes import render as as_json

        return as_json(changes)
    from rigc.reports.revision.changes.sheet import changes_sheet

    sheet = changes_sheet(changes, brief)
    if form == "text":
        from rigc.output.whole_text import render as as_text

        return as_text(sheet)
    from rigc.cli.seam import rendered
    from rigc.reports.content import Document, TitleBlock

    head = found.head
    title = TitleBlock(
        head.title, head.name, head.client, sheet.title, head.letter, head.date, head.drawn, head.checked, found.hash
    )
    return rendered((Document(sheet, title, 1, 1),), form, "a4")
