"""Two files of one rig, as git hands them over -> what changed, statement by statement."""

from __future__ import annotations

from pathlib import Path

from rigc.loader import Unreadable
from rigc.syntax.nodes import File


def legible(path: Path, name: str) -> str:
    """The canonical text of a file; its text as it is where it can't be read whole; nothing for no file."""
    file, text = _read(path, name)
    if file is None:
        return text
    from rigc.edit.canonical import canonical

    return canonical(file)


def compared(old: Path, new: Path, name: str) -> str:
    """The statements that differ, block by block, under the name; a plain diff where a file can't be read whole."""
    before, after = _read(old, name), _read(new, name)
    if before[0] is None or after[0] is None:
        from rigc.edit.text_diff import text_diff

        return text_diff(name, before[1], after[1])
    from rigc.edit.statement_changes import statement_changes

    return f"{name}\n{statement_changes(before[0], after[0])}\n"


def _read(path: Path, name: str) -> tuple[File | None, str]:
    from rigc.files.reader import CachedReader
    from rigc.files.reading import decode, read_source

    try:
        source = decode(b"", name) if str(path) == "/dev/null" else read_source(path, name)
    except Unreadable as fault:
        try:
            return None, path.read_bytes().decode("utf-8", "replace")
        except OSError:
            return None, f"{fault}\n"
    parsed = CachedReader().parse(source)
    return (None if parsed.findings else parsed.file), source.text
