"""A group whose list of commands says of each its first sentence whole: click's own cuts it."""

from __future__ import annotations

import click


class WholeList(click.Group):
    """The group."""

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        lines = [
            (name, command.get_short_help_str(limit=1_000))
            for name, command in sorted(self.commands.items())
            if not command.hidden
        ]
        with formatter.section("Commands"):
            formatter.write_dl(lines)
