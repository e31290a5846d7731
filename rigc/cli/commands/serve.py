"""`rigc serve`: the rig as a page that follows every save, and on which things are moved."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import Given, disks
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.preview.preview import Preview

STILL_S = 0.1
"""So long the files must be still before they are read: most editors write a file at one stroke."""
QUIET_S = 0.5
"""So long nobody must save before mends are sought, which takes what the page needs for its drawing."""
_BESIDE_HELP = "Also offer another rig, or a revision of git, to be set beside this one. Repeatable."
_EDITOR_HELP = "What opens a line in your editor, such as 'code -g {file}:{line}'."


@click.command()
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="Default: any that is free.")
@click.option("--beside", multiple=True, metavar="PATH|REV", help=_BESIDE_HELP)
@click.option("--editor", metavar="COMMAND", help=_EDITOR_HELP)
@click.option("--browser", is_flag=True, help="Also open the page in your browser.")
@click.pass_obj
def serve(
    screen: Screen, path: str | None, port: int, beside: tuple[str, ...], editor: str | None, browser: bool
) -> int:
    """Serve a page that shows the rig and follows every save, until Ctrl-C.

    It shows sheets and the plan, findings and how each number came about, with the lines of the source. A thing that is moved on the plan,
    with the mouse or the keyboard, gets its new place written into the source, as `rigc pin` would; the page tells first what
    that does. Only this machine can reach it, and only with the address that is printed.
    """
    import gc
    import secrets
    import threading

    from rigc.files.reader import CachedReader
    from rigc.files.served import told_served
    from rigc.preview.preview import Preview
    from rigc.preview.server.server import Server

    given = Given(None, "stdin.rig", None, (), "error", None)
    if path == "-":
        raise click.UsageError("a page is for a file, not for standard input")
    (disk,) = disks([path] if path else [], given)
    if not disk.typed.is_file():  # one that can't be read may be mended while it is served
        what = "it is a folder: name a rig in it" if disk.typed.is_dir() else "there is no such file"
        raise click.ClickException(f"cannot read '{disk.typed}': {what}")
    gc.enable()  # a command that ends soon does without
    gc.set_threshold(50_000, 10, 10)  # each move that is tried leaves a whole rig behind
    preview = Preview(disk.typed, CachedReader(), {word: _side(word, disk.typed, given) for word in beside})
    try:
        server = Server(preview, port, secrets.token_urlsafe(24), _opening(editor))
    except OSError as fault:
        raise click.ClickException(f"cannot serve at port {port}: {str(fault.strerror).lower()}") from None
    threading.Thread(target=_follow, args=(preview,), daemon=True).start()
    told_served(preview.rig, server.address)
    screen.out(f"{server.address}\n")
    screen.progress(f"serving {disk.typed}; Ctrl-C ends\n")
    if browser:
        import webbrowser

        webbrowser.open(server.address)
    try:
        server.serve_forever()
    finally:
        preview.lock.acquire()  # a move that is being written is written whole
        server.server_close()
    return 0


def _follow(preview: Preview) -> None:
    """Looks again whenever a file of the rig has changed."""
    from rigc.files.marks import marks, next_change

    advised = False
    while True:
        seen = marks(preview.watched)
        try:
            if preview.refresh():  # what changed between the look and the marks is seen by one look more
                advised = False
                continue
            if not advised and not next_change(seen, STILL_S, QUIET_S):
                preview.advise()
                advised = True
                continue
        except Exception as bug:
            preview.failed(bug)
        next_change(seen, STILL_S)


def _side(word: str, rig: Path, given: Given) -> Callable[[], Any]:
    from rigc.cli.seam import reader
    from rigc.cli.sides import Side, sides
    from rigc.compile import compile_rig

    side: Side = disks([word], given)[0] if Path(word).is_file() else sides((word, str(rig)), 1, given)[0]
    return lambda: compile_rig(side, side.name, reader(), advice=False)


def _opening(command: str | None) -> Callable[[Path, int], None] | None:
    if command is None:
        return None
    import shlex
    import subprocess

    words = shlex.split(command)
    if not words or "{file}" not in command:
        raise click.UsageError("--editor names a command with {file} and {line}: 'code -g {file}:{line}'")

    def opened(path: Path, line: int) -> None:
        named = [word.replace("{file}", str(path)).replace("{line}", str(line)) for word in words]
        null = subprocess.DEVNULL
        subprocess.Popen(named, stdin=null, stdout=null, stderr=null)  # noqa: S603  (the user's own command, without a shell)

    return opened
