"""The reader of one command: parses sources, and keeps tables and clean parses in the user's cache folder.

Making the grammar's tables takes a second, loading lark and them some hundred milliseconds; a file without mistakes needs but what the
automaton goes by, which an installed rigc bears (`STATES`), and one that has not changed since it was parsed not even that.
"""

from __future__ import annotations

import hashlib
import io
import os
import pickle
import sys
from collections.abc import Callable
from functools import cached_property
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rigc.analysis.laying.search.known import KNOWN
from rigc.files.cache import cache
from rigc.record import Record
from rigc.resources import folder
from rigc.source import Source, Span, alike
from rigc.syntax.parsed import Parsed

if TYPE_CHECKING:
    from rigc.analysis.kept import Kept
    from rigc.syntax.parse import Grammar
    from rigc.syntax.tables import Tables

STATES = Path(__file__).parent.parent / "syntax" / "states.txt"
"""What was made when rigc was installed; in a checkout whose grammar was edited since it is of another, and made anew."""

_MISTAKEN = "unit mill {\n  dr\n  output out\n}\n  dr\n"
_OURS = ("rigc.syntax.", "rigc.source")
_MOST_READ = 64  # so many sources are held with what was read of them


def shipped_states() -> str:
    """The text of `STATES`: what it was made of, the reserved words, and what the automaton goes by, a line each."""
    from rigc.syntax.tables import Tables

    text = _grammar_text()
    tables = Tables.build(text)
    return "\n".join((_made_of(text), " ".join(sorted(tables.reserved)), tables.automaton, ""))


def _kept_layouts() -> Kept:
    from rigc.files.kept import kept

    return kept()


class CachedReader:
    """Reads with the grammar of this rigc, and lets found layouts be kept beside what it read. A cache that can't be read or written costs
    time and nothing else."""

    def __init__(self) -> None:
        self._text = _grammar_text()
        self._cache = cache()
        self._read: dict[int, tuple[Source, Parsed]] = {}
        KNOWN.kept = _kept_layouts

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        """The file as written; from the cache when its text is that of its last clean parse, else what has changed since is read anew.
        A text that is only tried, since it is `near` a file, is not kept. The same source is read once."""
        if near is not None:
            return self._parsed(source, near)
        if id(source) not in self._read:
            if len(self._read) >= _MOST_READ:
                self._read.clear()
            self._read[id(source)] = source, self._parsed(source, None)
        return self._read[id(source)][1]

    def _parsed(self, source: Source, near: Parsed | None) -> Parsed:
        kept = self._kept(source) if near is None else None
        if kept is not None and kept.file.span.source is source:
            return kept
        from rigc.syntax.parse import parse

        parsed = parse(source, self.grammar, near or kept)
        if near is None and not parsed.findings and (kept is None or _far(kept.file.span.source.text, source.text)):
            text = source.text.encode("utf-8", "surrogatepass")
            saved = self._key + len(text).to_bytes(8) + text + _pickled(parsed)
            self._cache.write(self._name("parsed", source.name, source.origin), saved)
        return parsed

    def _kept(self, source: Source) -> Parsed | None:
        """The last clean parse of the file: of this source, or of one with the text that it had."""
        saved = self._cache.read(self._name("parsed", source.name, source.origin))
        if saved is None or not saved.startswith(self._key):
            return None
        begin = len(self._key) + 8
        end = begin + int.from_bytes(saved[begin - 8 : begin])
        text = saved[begin:end].decode("utf-8", "replace")
        return _unpickled(
            saved[end:], source if text == source.text else Source(source.name, text, None, source.origin)
        )

    @cached_property
    def reserved(self) -> frozenset[str]:
        """The words of the language that can't name a declared thing."""
        shipped = self._shipped(1)
        if shipped is not None:
            return frozenset(shipped.split())
        name = self._name("reserved", self._key.hex())
        saved = self._cache.read(name)
        if saved:
            return frozenset(saved.decode("ascii").split())
        words = self._tables.reserved
        self._cache.write(name, " ".join(sorted(words)).encode("ascii"))
        return words

    @cached_property
    def grammar(self) -> Grammar:
        """The grammar of `grammar/rig.lark`."""
        from rigc.syntax.automaton import Automaton
        from rigc.syntax.parse import Grammar

        shipped = self._shipped(2)
        if shipped is not None:
            return Grammar(Automaton(shipped), lambda: self._tables)
        name = self._name("states", self._key.hex())
        saved = self._cache.read(name)
        if saved is None:
            saved = self._tables.automaton.encode("ascii")
            self._cache.write(name, saved)
        return Grammar(Automaton(saved.decode("ascii")), lambda: self._tables)

    def ready(self) -> None:
        """Loads what the first mistake in a file would else wait for."""
        from rigc.syntax.parse import parse

        parse(Source("", _MISTAKEN), self.grammar)

    def _shipped(self, number: int) -> str | None:
        """A line of what was installed, read no further than it; None where there is none of this grammar and code."""
        try:
            with STATES.open(encoding="ascii") as file:
                lines = [file.readline() for _ in range(number + 1)]
        except (OSError, ValueError):
            return None
        return lines[number] if lines[number].endswith("\n") and lines[0] == f"{_made_of(self._text)}\n" else None

    @cached_property
    def _tables(self) -> Tables:
        from rigc.syntax.tables import Tables

        name = self._name("tables", self._key.hex())
        saved = self._cache.read(name)
        loaded = Tables.load(saved) if saved else None
        if loaded is not None:
            return loaded
        made = Tables.build(self._text)
        self._cache.write(name, made.save())
        return made

    @cached_property
    def _key(self) -> bytes:
        """What every kept file hangs on: the grammar, the code that builds the nodes, and this Python."""
        code = Path(__file__).parent.parent / "syntax"
        times = sorted(entry.stat().st_mtime_ns for place in (code, code / "nodes") for entry in os.scandir(place))
        return hashlib.sha256("\n".join((self._text, sys.version, str(code), *map(str, times))).encode()).digest()

    def _name(self, sort: str, *what: str) -> str:
        return f"{sort}-{hashlib.sha256(chr(0).join(what).encode('utf-8', 'surrogatepass')).hexdigest()[:24]}"


def _grammar_text() -> str:
    return (folder("grammar") / "rig.lark").read_text("utf-8")


def _made_of(text: str) -> str:
    """The digest of the grammar and of the code that makes the automaton of it."""
    code = [(STATES.parent / name).read_bytes() for name in ("automaton.py", "tables.py")]
    return hashlib.sha256(b"\0".join((text.encode("utf-8"), *code))).hexdigest()


def _far(old: str, new: str) -> bool:
    """Whether so much has changed that it pays to keep the file anew: else the next run, too, reads the little that has."""
    begin, end = alike(old, new)
    return (max(len(old), len(new)) - begin - end) * 8 > len(new)


def _source() -> Source:
    """In what is kept it stands for the source that was read, which `_Unpickler` puts there."""
    raise pickle.UnpicklingError("a source")


class _Unpickler(pickle.Unpickler):
    def __init__(self, file: io.BytesIO, source: Source) -> None:
        super().__init__(file)
        self._source = source

    def find_class(self, module: str, name: str) -> Callable[..., Any]:
        """Values of the syntax and nothing else: what is kept can hold no code that runs when it is read."""
        if (module, name) == (__name__, _source.__name__):
            return lambda: self._source
        if module.startswith(_OURS):
            found = getattr(import_module(module), name)
            if isinstance(found, type) and issubclass(found, Record | Span):
                return found
        raise pickle.UnpicklingError(f"{module}.{name}")


def _pickled(parsed: Parsed) -> bytes:
    into = io.BytesIO()
    pickler = pickle.Pickler(into, pickle.HIGHEST_PROTOCOL)
    # most of what is kept are places: so each takes half the time
    pickler.dispatch_table = {
        Source: lambda _: (_source, ()),
        Span: lambda span: (Span, (span.source, span.start, span.end)),
    }
    pickler.dump(parsed)
    return into.getvalue()


def _unpickled(saved: bytes, source: Source) -> Parsed | None:
    try:
        loaded = _Unpickler(io.BytesIO(saved), source).load()
    except Exception:  # a pickle cut short can fail in any way; the file is then parsed anew
        return None
    return loaded if isinstance(loaded, Parsed) else None
