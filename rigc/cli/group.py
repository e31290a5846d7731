"""The words after `rigc` -> the command they name."""

from __future__ import annotations

import sys
from collections.abc import Iterator, MutableMapping
from importlib import import_module

import click

from rigc.cli.screen import Screen, wants_colour
from rigc.cli.whole_list import WholeList
from rigc.diagnostics.near import nearest

NAMES = (
    "build", "check", "completion", "diff", "explain", "fmt", "fresh", "git", "intake", "lsp", "man", "mend", "model", "new", "pin", "rename",
    "serve", "show", "swap", "templates", "why",
)  # fmt: skip


class _ByName(MutableMapping[str, click.Command]):
    """The commands, each imported when it is asked for: one run needs one of them."""

    def __getitem__(self, name: str) -> click.Command:
        if name not in NAMES:
            raise KeyError(name)
        command: click.Command = getattr(import_module(f"rigc.cli.commands.{name}"), name)
        return command

    def __iter__(self) -> Iterator[str]:
        return iter(NAMES)

    def __len__(self) -> int:
        return len(NAMES)

    def __setitem__(self, name: str, command: click.Command) -> None:
        raise TypeError("a command is named in NAMES")

    def __delitem__(self, name: str) -> None:
        raise TypeError("a command is named in NAMES")


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


@click.group(
    cls=Commands, commands=_ByName(), no_args_is_help=False, context_settings={"help_option_names": ["-h", "--help"]}
)
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
