"""What compiling asks of whoever reads files: `load(name)` gives a `Source`, or raises `Unreadable`."""

from __future__ import annotations

from posixpath import dirname, join, normpath
from typing import Protocol

from rigc.source import Source


class Unreadable(Exception):
    """A file cannot be had as text.

    `message` is one line that makes sense alone and names the file as it was asked for; `help` is one thing to do, or
    empty. `line` and `column` (from 1) are set where the fault has a place inside the file. `near` is the file beside it
    that was surely meant, where there is one.
    """

    def __init__(self, name: str, message: str, help: str = "", line: int = 0, column: int = 0, near: str = "") -> None:
        super().__init__(message)
        self.name = name
        self.message = message
        self.help = help
        self.line = line
        self.column = column
        self.near = near

    def __str__(self) -> str:
        place = f"{self.name}:{self.line}:{self.column}" if self.line else self.name
        return f"{place}: error: {self.message}"


class Loader(Protocol):
    """Gives the source of a name that is relative to the folder of the file named on the command line.

    Two names of one file give the same `Source` object. Raises `Unreadable`.
    """

    def __call__(self, name: str) -> Source: ...


STOCK_FILES = ("cables", "decks", "plugs", "premade", "strips")
"""What the generic stock holds, a file each: `stock/cables.rig`."""

STOCK = "stock/"
"""Names that begin so are the generic stock that ships with rigc, from whichever folder they are used."""


def used_name(user: str, path: str) -> str:
    """The name of the file that the source named `user` calls `path`."""
    if path.startswith(STOCK):
        return normpath(path)
    return normpath(join(dirname(user), path))
