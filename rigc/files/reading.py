"""A path -> a `Source`; bytes that are no text, or a file that is not there, -> `Unreadable`, which says where and why."""

from __future__ import annotations

import errno
import os
import stat
from datetime import datetime
from pathlib import Path

from rigc.loader import Unreadable
from rigc.source import Source

SIZE_LIMIT = 4 * 1024 * 1024
"""The largest source that is read, in bytes: some hundred times a large touring rig."""


_HANDED_OVER = Path("/dev")
_TO_DO = {
    errno.EACCES: "let it be read by who runs rigc",
    errno.EPERM: "let it be read by who runs rigc",
    errno.ELOOP: "make it a file, or a link to one",
    errno.ESPIPE: "put its text into a file, or give it to: rigc check -",
}
"""What to do where a file of that name is there and can't be read."""
_SAVE = "save it as UTF-8: in most editors Save As, then Encoding"


def read_source(path: Path, name: str) -> Source:
    """The source in the file at `path`, known to findings as `name`. Raises `Unreadable`; so where nobody may ever write what is to be read."""
    try:
        _refuse_pipe(path)
        with path.open("rb") as file:
            _refuse_size(name, os.fstat(file.fileno()).st_size)
            data = file.read(SIZE_LIMIT + 1)
    except (OSError, ValueError) as fault:
        advice, near = _advice(path, fault)
        raise Unreadable(name, f"cannot read '{name}': {_why(path, fault)}", advice, near=near) from None
    return decode(data, name, str(path))


def read_spreadsheet(path: Path) -> tuple[bytes, str]:
    """The bytes of a file, and the day (ISO date) on which it was written. Raises `Unreadable`."""
    try:
        _refuse_pipe(path)
        with path.open("rb") as file:
            written = datetime.fromtimestamp(os.fstat(file.fileno()).st_mtime).astimezone().date().isoformat()
            return file.read(), written
    except (OSError, ValueError) as fault:
        raise Unreadable(path.name, f"cannot read '{path.as_posix()}': {_why(path, fault)}", "") from None


def decode(data: bytes, name: str, origin: str = "") -> Source:
    """The source in `data`: UTF-8 with or without a byte order mark, line ends of any kind. Raises `Unreadable`."""
    _refuse_size(name, len(data))
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise Unreadable(name, f"'{name}' is UTF-16 text", _SAVE, 1, 1)
    nul = data.find(b"\0")
    if nul >= 0:
        raise _bad_byte(data, name, nul, "holds a NUL byte", "this is no text file; name a .rig file")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _other_encoding(data, name, _first_bad_byte(data)) from None
    return Source(name, _unix(text), data, origin)


def _refuse_size(name: str, size: int) -> None:
    if size > SIZE_LIMIT:
        help = "split it into files joined with use"
        raise Unreadable(name, f"'{name}' is larger than {SIZE_LIMIT // 1024**2} MiB, the limit for a rig file", help)


def _first_bad_byte(data: bytes) -> int:
    try:
        data.decode("utf-8")
    except UnicodeDecodeError as fault:
        return fault.start
    raise AssertionError("these bytes are UTF-8")


def _other_encoding(data: bytes, name: str, at: int) -> Unreadable:
    """The refusal of text in an encoding of one byte a sign, with the words around the first sign that shows it."""
    begin, end = data.rfind(b"\n", 0, at) + 1, data.find(b"\n", at)
    words = data[max(begin, at - 20) : at + 10 if end < 0 else min(end, at + 10)].decode("cp1252", "replace").strip()
    sign = data[at : at + 1].decode("cp1252", "replace")
    said = f"is not saved as UTF-8: '{sign}' (0x{data[at]:02x}) in '{words}' is of an older encoding"
    return _bad_byte(data, name, at, said, _SAVE)


def _bad_byte(data: bytes, name: str, at: int, what: str, help: str) -> Unreadable:
    before = _unix(data[:at].decode("utf-8-sig", "replace"))
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    return Unreadable(name, f"'{name}' {what} (line {line}, byte {at + 1} of the file)", help, line, column)


def _unix(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text


def _why(path: Path, fault: OSError | ValueError) -> str:
    if isinstance(fault, FileNotFoundError):
        return "there is no such file"
    if isinstance(fault, ValueError):
        return "that is no possible file name"
    if isinstance(fault, IsADirectoryError) or _is_folder(path):
        return "it is a folder"
    return (fault.strerror or type(fault).__name__).lower()


def _refuse_pipe(path: Path) -> None:
    """A named pipe opens when someone writes, which may be never; what a shell hands over as a file (`<(...)`) is being written."""
    if stat.S_ISFIFO(path.stat().st_mode) and not path.is_relative_to(_HANDED_OVER):
        raise OSError(errno.ESPIPE, "it is a pipe, not a file")


def _is_folder(path: Path) -> bool:
    try:
        return stat.S_ISDIR(path.stat().st_mode)
    except OSError:
        return False


def _advice(path: Path, fault: OSError | ValueError) -> tuple[str, str]:
    """What to do, and the file that was surely meant."""
    told = _TO_DO.get(fault.errno or 0) if isinstance(fault, OSError) else None
    return _neighbour(path) if told is None else (told, "")


def _neighbour(path: Path) -> tuple[str, str]:
    """Advice from what stands in the folder where the file was looked for, and the file that was surely meant."""
    try:
        folder = path if path.is_dir() else path.parent
        rigs = sorted(entry.name for entry in folder.iterdir() if entry.suffix == ".rig")
    except (OSError, ValueError):
        return "", ""
    if not rigs:
        return "", ""
    if path.is_dir():
        return f"name a file in it, such as '{rigs[0]}'", ""
    from rigc.diagnostics.near import nearest

    near = nearest(path.name, rigs)
    return (f"did you mean '{near}'?", near) if near else ("", "")
