"""The reader of one command: parses sources, and keeps tables and clean parses in the user's cache folder.

Making the grammar's tables takes a second, loading lark and them some hundred milliseconds; a file that has not changed
since it was parsed needs neither.
"""

from __future__ import annotations

import hashlib
import io
import os
import pickle
import sys
import tempfile
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rigc.files.cache import cache_folder, thinned
from rigc.resources import folder
from rigc.source import Source
from rigc.syntax.parsed import Parsed

if TYPE_CHECKING:
    from rigc.syntax.parse import Grammar


MOST_KEPT = {"parsed": 200, "tried": 60}
"""So many parsed files are kept, a shop's rigs with what they use are fewer; and so many texts that were tried, which mends of a rig give."""


class CachedReader:
    """Reads with the grammar of this rigc. A cache that can't be read or written costs time and nothing else."""

    def __init__(self) -> None:
        self._text = (folder("grammar") / "rig.lark").read_text("utf-8")
        self._cache = cache_folder()

    def parse(self, source: Source, tried: bool = False) -> Parsed:
        """The file as written; from the cache when its bytes are those of its last clean parse. A text that is only tried is kept beside
        the file's own, for the next run tries it again."""
        mark = hashlib.sha256(self._key + source.data).digest()
        what = "tried" if tried else "parsed"
        kept = self._kept("\0".join((what, source.name, source.origin, *([mark.hex()] if tried else []))))
        if kept is not None and (saved := _read(kept)) is not None and saved.startswith(mark):
            loaded = _unpickled(saved[len(mark) :], source)
            if loaded is not None:
                return loaded
        from rigc.syntax.parse import parse

        parsed = parse(source, self.grammar)
        if kept is not None and not parsed.findings:
            _write(kept, mark + _pickled(parsed))
            thinned(kept.parent, f"{what}-", MOST_KEPT[what])
        return parsed

    @cached_property
    def reserved(self) -> frozenset[str]:
        """The words of the language that can't name a declared thing."""
        kept = self._kept("reserved")
        saved = _read(kept) if kept is not None else None
        if saved:
            return frozenset(saved.decode("ascii").split())
        words = self.grammar.reserved
        if kept is not None:
            _write(kept, " ".join(sorted(words)).encode("ascii"))
        return words

    @cached_property
    def grammar(self) -> Grammar:
        """The tables of `grammar/rig.lark`."""
        from rigc.syntax.parse import Grammar

        kept = self._kept("tables")
        saved = _read(kept) if kept is not None else None
        loaded = Grammar.load(saved) if saved else None
        if loaded is not None:
            return loaded
        made = Grammar.build(self._text)
        if kept is not None:
            _write(kept, made.save())
        return made

    @cached_property
    def _key(self) -> bytes:
        """What every kept file hangs on: the grammar, the code that builds the nodes, and this Python."""
        code = Path(__file__).parent.parent / "syntax"
        times = sorted(entry.stat().st_mtime_ns for place in (code, code / "nodes") for entry in os.scandir(place))
        return hashlib.sha256("\n".join((self._text, sys.version, str(code), *map(str, times))).encode()).digest()

    def _kept(self, what: str) -> Path | None:
        if self._cache is None:
            return None
        name = what.split("\0")[0]
        hangs_on = self._key if name not in MOST_KEPT else b""
        return (
            self._cache / f"{name}-{hashlib.sha256(hangs_on + what.encode('utf-8', 'surrogatepass')).hexdigest()[:24]}"
        )


class _Pickler(pickle.Pickler):
    def persistent_id(self, thing: Any) -> str | None:
        return "source" if isinstance(thing, Source) else None


class _Unpickler(pickle.Unpickler):
    def __init__(self, file: io.BytesIO, source: Source) -> None:
        super().__init__(file)
        self._source = source

    def persistent_load(self, pid: Any) -> Source:  # noqa: ARG002
        return self._source


def _pickled(parsed: Parsed) -> bytes:
    into = io.BytesIO()
    _Pickler(into, pickle.HIGHEST_PROTOCOL).dump(parsed)
    return into.getvalue()


def _unpickled(saved: bytes, source: Source) -> Parsed | None:
    try:
        loaded = _Unpickler(io.BytesIO(saved), source).load()
    except Exception:  # a pickle cut short can fail in any way; the file is then parsed anew
        return None
    return loaded if isinstance(loaded, Parsed) else None


def _read(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except OSError:
        return None


def _write(path: Path, data: bytes) -> None:
    try:
        handle, temporary = tempfile.mkstemp(dir=path.parent)
    except OSError:
        return
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        Path(temporary).replace(path)
    except OSError:
        Path(temporary).unlink(missing_ok=True)
