"""`rigc completion`: the script by which a shell completes commands, options, rules, sheets and rigs; and what it is offered."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from click.shell_completion import CompletionItem

SHELLS = ("bash", "zsh", "fish")


@click.command()
@click.argument("shell", type=click.Choice(SHELLS))
@click.pass_obj
def completion(screen: Screen, shell: str) -> int:
    """Print the script by which a shell completes commands, options, rules and sheets.

    For bash write eval "$(rigc completion bash)" into ~/.bashrc, for zsh the like into ~/.zshrc; for fish put what is printed
    into ~/.config/fish/completions/rigc.fish.
    """
    from click.shell_completion import get_completion_class

    made = get_completion_class(shell)
    assert made is not None
    screen.out(f"{made(click.get_current_context().find_root().command, {}, 'rigc', '_RIGC_COMPLETE').source()}\n")
    return 0


def rigs(ctx: click.Context, param: click.Parameter, typed: str) -> list[CompletionItem]:  # noqa: ARG001
    """Files and folders, which the shell lists itself."""
    return _offered((typed,), "file")


def rules(ctx: click.Context, param: click.Parameter, typed: str) -> list[CompletionItem]:  # noqa: ARG001
    """The names of rules."""
    from rigc.diagnostics.explain import rule_names

    return _offered(name for name in rule_names() if name.startswith(typed))


def rules_and_rigs(ctx: click.Context, param: click.Parameter, typed: str) -> list[CompletionItem]:
    """The names of rules, where one is typed; else files."""
    return (rules(ctx, param, typed) if typed else []) or rigs(ctx, param, typed)


def sheets(ctx: click.Context, param: click.Parameter, typed: str) -> list[CompletionItem]:  # noqa: ARG001
    """The names of sheets; of several by commas the last is completed."""
    from rigc.cli import seam

    before, comma, last = typed.rpartition(",")
    names = (name for name, _ in (*seam.sheets(), *(() if comma else seam.views())))
    return _offered(f"{before}{comma}{name}" for name in names if name.startswith(last))


def _offered(values: Iterable[str], kind: str = "plain") -> list[CompletionItem]:
    from click.shell_completion import CompletionItem

    return [CompletionItem(value, type=kind) for value in values]
