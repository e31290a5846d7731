"""The words after `rigc` -> the command they name."""

from __future__ import annotations

import sys

import click

from rigc.cli.commands.build import build
from rigc.cli.commands.check import check
from rigc.cli.commands.completion import completion
from rigc.cli.commands.diff import diff
from rigc.cli.commands.explain import explain
from rigc.cli.commands.fmt import fmt
from rigc.cli.commands.fresh import fresh
from rigc.cli.commands.git import git
from rigc.cli.commands.intake import intake
from rigc.cli.commands.lsp import lsp
from rigc.cli.commands.man import man
from rigc.cli.commands.mend import mend
from rigc.cli.commands.model import model
from rigc.cli.commands.new import new
from rigc.cli.commands.pin import pin
from rigc.cli.commands.rename import rename
from rigc.cli.commands.serve import serve
from rigc.cli.commands.show import show
from rigc.cli.commands.swap import swap
from rigc.cli.commands.templates import templates
from rigc.cli.commands.why import why
from rigc.cli.screen import Screen, wants_colour
from rigc.cli.whole_list import WholeList
from rigc.diagnostics.near import nearest


class Commands(WholeList):
    """A group that names the nearest command for one that there is not."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        word = args[0]
        if word not in self.commands and not word.startswith("-"):
            near = nearest(word, self.commands)
            raise click.UsageError(f"no command '{word}'" + (f"; did you mean '{near}'?" if near else ""), ctx)
        return super().resolve_command(ctx, args)


def _version(ctx: click.Context, param: click.Parameter, asked: bool) -> None:  # noqa: ARG001
    if asked and not ctx.resilient_parsing:
        from rigc import __version__
        from rigc.gather import LANGUAGE

        click.echo(f"rigc {__version__}, language {LANGUAGE}")
        ctx.exit()


@click.group(cls=Commands, no_args_is_help=False, context_settings={"help_option_names": ["-h", "--help"]})
@click.option("--color", type=click.Choice(["auto", "always", "never"]), default="auto", help="Colour the findings.")
@click.option("-q", "--quiet", is_flag=True, help="Print only the findings that make the exit code 1.")
@click.option("-v", "--verbose", is_flag=True, help="Also print each file that is read or written.")
@click.option(
    "--version",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_version,
    help="Print the versions of rigc and of its language.",
)
@click.pass_context
def rigc(ctx: click.Context, color: str, quiet: bool, verbose: bool) -> None:
    """Compile a pedal rig, written as text, into the documents for its build.

    Exit codes: 0 all is well, 1 findings, 2 nothing could be judged, 70 a bug in rigc, 130 interrupted.
    """
    ctx.obj = Screen(wants_colour(color, sys.stderr), quiet, verbose, wants_colour(color, sys.stdout))


for command in (
    build,
    check,
    completion,
    diff,
    explain,
    fmt,
    fresh,
    git,
    intake,
    lsp,
    man,
    mend,
    model,
    new,
    pin,
    rename,
    serve,
    show,
    swap,
    templates,
    why,
):
    rigc.add_command(command)
