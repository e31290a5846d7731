"""Whatever happens in a command -> an exit code, and for every one but 0 a line that says why.

0: done, the answer is yes. 1: done, the answer is no. 2: could not answer. 70: a bug in rigc. 130: interrupted.
"""

from __future__ import annotations

import errno
import gc
import os
import sys
from collections.abc import Sequence

import click

from rigc.cli.group import rigc
from rigc.cli.screen import discard, harmless, say

YES, NO, NO_ANSWER, BUG, INTERRUPTED = 0, 1, 2, 70, 130


def main(arguments: Sequence[str] | None = None) -> int:
    """Run rigc with these arguments (the process's own if None) and give the exit code. Whoever runs it within a process finds the search
    for circles of what is no longer used as it was."""
    collects = gc.isenabled()
    gc.disable()  # a command is over before collecting would pay
    try:
        _heed_termination()
        return _answer(sys.argv[1:] if arguments is None else arguments)
    except click.ClickException as fault:
        say(sys.stderr, f"{harmless(_refusal(fault))}\n")
        return NO_ANSWER
    except (click.Abort, KeyboardInterrupt):
        say(sys.stderr, "rigc: interrupted; no file is left half-written\n")
        return INTERRUPTED
    except BrokenPipeError:  # the reader of a help page has gone
        discard(sys.stdout)
        return YES
    except Exception as fault:
        if isinstance(fault, OSError) and fault.errno in _STREAM_FAULTS:
            discard(sys.stdout)
            say(sys.stderr, f"rigc: cannot write to standard output: {str(fault.strerror).lower()}\n")
            return NO_ANSWER
        say(sys.stderr, _bug_report(fault))
        return BUG
    finally:
        if arguments is None:
            gc.freeze()  # nor before the process ends
        elif collects:
            gc.enable()


# What printing of help can meet; what reads and writes files tells of its own faults.
_STREAM_FAULTS = (errno.ENOSPC, errno.EIO, errno.EBADF)


def _answer(arguments: Sequence[str]) -> int:
    """Run the command; click's own `main` would answer some faults by itself, and ends completion as a shell wants it."""
    if "_RIGC_COMPLETE" in os.environ:
        rigc.main(prog_name="rigc")
    try:
        with rigc.make_context("rigc", list(arguments)) as context:
            return int(rigc.invoke(context) or YES)
    except click.exceptions.Exit as done:
        return done.exit_code


def _heed_termination() -> None:
    """Let a request to end the process undo what is half done, as Ctrl-C does."""
    import signal
    import threading

    if threading.current_thread() is threading.main_thread():
        signal.signal(signal.SIGTERM, signal.default_int_handler)


def _refusal(fault: click.ClickException) -> str:
    message = fault.format_message().rstrip(".")
    if not isinstance(fault, click.UsageError):
        return f"rigc: {message}"
    command = fault.ctx.command_path if fault.ctx else "rigc"
    if isinstance(fault, click.NoSuchOption):
        message = _no_option(fault)
    message = " ".join((message[:1].lower() + message[1:]).split())
    return f"{command}: {message} ({command} --help says more)"


def _no_option(fault: click.NoSuchOption) -> str:
    name = fault.option_name
    if any(name in option.opts for option in rigc.params):
        return f"option '{name}' goes before the command"
    return f"no option '{name}'" + (f"; did you mean '{fault.possibilities[0]}'?" if fault.possibilities else "")


def _bug_report(bug: Exception) -> str:
    """The line for the user; the traceback goes to a file in the temporary folder, and with RIGC_DEBUG in view."""
    import tempfile
    import traceback

    trace = "".join(traceback.format_exception(bug))
    what = " ".join(f"{type(bug).__name__}: {bug}".split())[:200]
    try:
        with tempfile.NamedTemporaryFile("wb", prefix="rigc-bug-", suffix=".txt", delete=False) as file:
            file.write(trace.encode("utf-8", "backslashreplace"))
        where = f"details in {file.name}"
    except OSError:
        where = "set RIGC_DEBUG=1 to see details"
    return f"{trace if os.environ.get('RIGC_DEBUG') else ''}rigc: a bug in rigc, not in the rig: {what}; {where}\n"
