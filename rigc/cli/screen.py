"""Text -> standard output and standard error: UTF-8 with the line ends given, quiet when the reader has gone."""

from __future__ import annotations

import os
import sys
from typing import TextIO

import click


class Screen:
    """How this run talks. `colour` is for findings only, on standard error and, `colour_out`, on standard output."""

    def __init__(
        self, colour: bool = False, quiet: bool = False, verbose: bool = False, colour_out: bool = False
    ) -> None:
        self.colour = colour
        self.colour_out = colour_out
        self.quiet = quiet
        self.verbose = verbose
        self._counting = False

    def out(self, text: str | bytes) -> None:
        """Print what was asked for: to its byte, but on a terminal with what would act there spelled out."""
        if sys.stdout is not None and sys.stdout.isatty():
            text = harmless(text if isinstance(text, str) else text.decode("utf-8", "backslashreplace"))
        say(sys.stdout, text)

    def findings(self, text: str) -> None:
        """Print findings, which are harmless and may have colours, as what was asked for."""
        say(sys.stdout, text)

    def found(self, text: str) -> None:
        """Print findings, which are harmless and may have colours, beside what was asked for."""
        say(sys.stderr, text)

    def err(self, text: str) -> None:
        """Print what the user must know."""
        say(sys.stderr, harmless(text))

    def progress(self, text: str) -> None:
        """Print what was done, unless all shall be quiet."""
        if not self.quiet:
            say(sys.stderr, harmless(text))

    def steps(self, done: int, of: int) -> None:
        """On a terminal, one line that counts: how far the search for places is, and that an interrupt ends it."""
        if self.quiet or sys.stderr is None or not sys.stderr.isatty():
            return
        self._counting = True
        say(sys.stderr, f"\rplaces: {100 * min(done, of) // of} % of {of} steps (Ctrl-C: the best so far)\x1b[K")

    def steps_over(self) -> None:
        """Takes that line away."""
        if self._counting:
            self._counting = False
            say(sys.stderr, "\r\x1b[K")


def wants_colour(choice: str, stream: TextIO | None) -> bool:
    """Whether findings are coloured: as chosen; else as NO_COLOR or FORCE_COLOR say; else if `stream` is a terminal."""
    if choice != "auto":
        return choice == "always"
    if os.environ.get("NO_COLOR"):
        return False
    if os.environ.get("FORCE_COLOR"):
        return True
    return stream is not None and stream.isatty() and os.environ.get("TERM") != "dumb"


def harmless(text: str) -> str:
    """The text with what would act on a terminal spelled out."""
    if text.replace("\n", "").isprintable():
        return text
    from rigc.diagnostics import excerpt  # help loads nothing of it

    return excerpt.harmless(text)


def say(stream: TextIO | None, text: str | bytes) -> None:
    """Write to a standard stream at once. A reader that has gone is no fault; a full disk is told."""
    if stream is None:  # closed by whoever started this process
        return
    try:
        stream.flush()
        stream.buffer.write(text if isinstance(text, bytes) else text.encode("utf-8", "backslashreplace"))
        stream.buffer.flush()
    except BrokenPipeError:
        discard(stream)
    except OSError as fault:
        discard(stream)
        if stream is not sys.stderr:
            raise click.ClickException(f"cannot write to standard output: {str(fault.strerror).lower()}") from None


def discard(stream: TextIO) -> None:
    """Send what still comes to nowhere, the flush at the end of the process included."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)
