"""`rigc man`: the manual page, made from the help of the commands."""

from __future__ import annotations

import re
from collections.abc import Iterator

import click

from rigc.cli.screen import Screen


@click.command()
@click.pass_obj
def man(screen: Screen) -> int:
    """Print the manual page of rigc, from the help of its commands.

    man -l reads what is printed from a file; kept as ~/.local/share/man/man1/rigc.1 it is what man rigc shows.
    """
    root = click.get_current_context().find_root()
    screen.out("".join(f"{line}\n" for line in _page(root)))
    return 0


def _page(root: click.Context) -> Iterator[str]:
    from rigc import __version__
    from rigc.gather import LANGUAGE

    assert isinstance(root.command, click.Group)
    about, *more = _paragraphs(root.command)
    yield f'.TH RIGC 1 "" "rigc {__version__}, language {LANGUAGE}" "rigc"'
    yield from (".SH NAME", _text(f"rigc - {about[:1].lower()}{about[1:].rstrip('.')}"))
    yield from (".SH SYNOPSIS", ".B rigc", _text("[OPTIONS] COMMAND [ARGS]..."))
    yield ".SH DESCRIPTION"
    yield from _joined(more)
    yield ".SH OPTIONS"
    yield from _options(root)
    yield ".SH COMMANDS"
    yield from _commands(root)


def _commands(above: click.Context) -> Iterator[str]:
    assert isinstance(above.command, click.Group)
    for name, command in sorted(above.command.commands.items()):
        if command.hidden:
            continue
        with click.Context(command, info_name=name, parent=above) as context:
            usage = " ".join(context.command.collect_usage_pieces(context))
            yield f".SS {_text(f'{context.command_path} {usage}')}"
            yield from _joined(_paragraphs(command))
            yield from _options(context)
            if isinstance(command, click.Group):
                yield from _commands(context)


def _options(context: click.Context) -> Iterator[str]:
    """What is said of each option, as its help prints it."""
    for each in context.command.get_params(context):
        told = each.get_help_record(context) if isinstance(each, click.Option) else None
        if told is not None:
            yield from (".TP", f".B {_text(told[0])}", _text(" ".join(told[1].split())))


def _paragraphs(command: click.Command) -> list[str]:
    return [" ".join(each.split()) for each in re.split(r"\n\s*\n", command.help or "")]


def _joined(paragraphs: list[str]) -> Iterator[str]:
    for each in paragraphs:
        yield from (".PP", _text(each))


def _text(text: str) -> str:
    """Text in which nothing acts: no escape, no request at the start of a line, and hyphens that can be copied."""
    plain = text.replace("\\", "\\e").replace("-", "\\-")
    return f"\\&{plain}" if plain.startswith((".", "'")) else plain
