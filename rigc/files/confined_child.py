"""The process in which the user's templates run: it gets what is asked as its standard input, and answers in JSON.

Everything that it will ever load is loaded before a template runs; from then on it can open no file, start no process and
write nothing but its answers, where the system has such limits.
"""

from __future__ import annotations

import importlib
import json
import pickle
import signal
import struct
import sys
import traceback
from typing import Any, BinaryIO

from rigc.output import formats, templates, typeface
from rigc.output.layout import Layout
from rigc.output.own_templates import OwnTemplates
from rigc.output.template_mistake import TemplateMistake

# What else is loaded only when it is needed: our formats, and what the engine takes for some filters and to tell where an error is.
LATE = (
    "rigc.output.html",
    "rigc.output.markdown",
    *("jinja2.constants", "jinja2.debug", "pprint", "random", "textwrap", "linecache", "difflib"),
    *(
        f"encodings.{name}"
        for name in ("ascii", "latin_1", "unicode_escape", "raw_unicode_escape", "utf_8_sig", "idna")
    ),
)


def main() -> None:
    """Answer until there is nothing more to read."""
    asking, answering = sys.stdin.buffer, sys.stdout.buffer
    seconds, memory_mb, own = _read(asking)
    for name in LATE:
        importlib.import_module(name)
    templates.our_templates()
    typeface.faces(typeface.ACCENTED, typeface.PLAIN + typeface.CONDENSED)
    _confine(memory_mb)
    child = _Child(own)
    while True:
        try:
            asked = _read(asking)
        except EOFError:
            return
        _write(answering, child.answer(asked, seconds))


class _Child:
    def __init__(self, own: OwnTemplates) -> None:
        self.own = own
        self.whole = templates.NOTHING

    def answer(self, asked: tuple[Any, ...], seconds: float) -> dict[str, Any]:
        try:
            _clock(seconds)
            return {"given": getattr(self, asked[0])(*asked[1:])}
        except TemplateMistake as mistake:
            return {"mistake": vars(mistake)}
        except (templates.LimitPassed, MemoryError):
            return {"stopped": True}
        except Exception:
            return {"bug": traceback.format_exc()}
        finally:
            _clock(0)

    def added(self, ours: tuple[str, ...]) -> list[dict[str, Any]]:
        templates.parsed(self.own)
        return [dict(vars(each)) for each in templates.added_sheets(self.own, ours)]

    def take(self, whole: templates.Whole) -> None:
        self.whole = whole

    def render(self, form: str, documents: Any, layout: Layout) -> str:
        return formats.document_renderer(form)(documents, layout, self.whole)


def _read(stream: BinaryIO) -> Any:
    head = stream.read(8)
    if len(head) < 8:
        raise EOFError
    return pickle.loads(stream.read(struct.unpack(">Q", head)[0]))


def _write(stream: BinaryIO, answer: dict[str, Any]) -> None:
    data = json.dumps(answer).encode()
    stream.write(struct.pack(">Q", len(data)) + data)
    stream.flush()


def _confine(memory_mb: int) -> None:
    try:
        import resource
    except ImportError:  # not on this system: the other side's patience is all there is
        return
    for name, most in (
        ("RLIMIT_AS", memory_mb * 1024**2),
        ("RLIMIT_NOFILE", 3),
        ("RLIMIT_FSIZE", 0),
        ("RLIMIT_NPROC", 0),
        ("RLIMIT_CORE", 0),
    ):
        kind = getattr(resource, name, None)
        if kind is not None:
            try:
                resource.setrlimit(kind, (most, most))
            except (OSError, ValueError):
                continue  # a system that knows the limit, and does not keep it


def _clock(seconds: float) -> None:
    """Raise in the midst of a template when so many seconds have gone; 0 lets it be.

    Where the system has no such clock, and in a step that cannot be interrupted, the other side ends the process.
    """
    if hasattr(signal, "setitimer"):
        signal.signal(signal.SIGALRM, _too_long)
        signal.setitimer(signal.ITIMER_REAL, seconds, 0.1 if seconds else 0)


def _too_long(_number: int, _frame: Any) -> None:
    raise templates.LimitPassed("the template takes longer than any page does")
