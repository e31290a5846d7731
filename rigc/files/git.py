"""The git program's settings of one repository: asked for, set and taken back, never one that is not ours."""

from __future__ import annotations

import subprocess
from pathlib import Path

from rigc.files.writing import write_all


class NoGit(Exception):
    """There is no git program, or no repository here. The text is one line that says which."""


def top_folder() -> Path:
    """The top folder of the repository around the current folder. Raises `NoGit`."""
    return Path(_asked("rev-parse", "--show-toplevel").removesuffix("\n"))


def setting(key: str) -> str | None:
    """What git goes by for a key, from the repository or from the user's own settings; None where it is not set."""
    return _setting("--get", key)


def change_setting(key: str, value: str) -> None:
    """Set a key of this repository."""
    _asked("config", "--local", key, value)


def drop_setting(key: str, value: str) -> bool:
    """Take a key of this repository back if it has exactly that value; whether it had."""
    if _setting("--local", "--get", key) != value:
        return False
    _asked("config", "--local", "--unset", key)
    return True


def diff_attribute(top: Path) -> str:
    """The `diff` attribute of a rig at the top of the repository, from whichever file; `unspecified` without one."""
    return _asked("-C", str(top), "check-attr", "diff", "--", "any.rig").rpartition(": ")[2].strip()


def add_attribute(top: Path, line: str) -> None:
    """Put a line at the end of the repository's `.gitattributes`. Raises `NotWritable`."""
    path = top / ".gitattributes"
    text = _text(path)
    write_all({path: f"{text}{'' if not text or text.endswith(chr(10)) else chr(10)}{line}\n"})


def drop_attribute(top: Path, line: str) -> bool:
    """Take that line out of the repository's `.gitattributes`, and an empty file away; whether it was there."""
    path = top / ".gitattributes"
    lines = _text(path).splitlines(keepends=True)
    kept = [each for each in lines if each.rstrip("\r\n") != line]
    if len(kept) == len(lines):
        return False
    if kept:
        write_all({path: "".join(kept)})
    else:
        path.unlink()
    return True


def _text(path: Path) -> str:
    try:
        return path.read_bytes().decode("utf-8")
    except FileNotFoundError:
        return ""
    except UnicodeDecodeError:
        raise NoGit(f"'{path.name}' is no UTF-8 text; it was left alone") from None


def _setting(*arguments: str) -> str | None:
    run = _run("config", "--null", *arguments)
    return run.stdout.decode("utf-8", "surrogateescape").split("\0")[0] if run.returncode == 0 else None


def _asked(*arguments: str) -> str:
    run = _run(*arguments)
    if run.returncode:
        why = run.stderr.decode("utf-8", "replace").strip().split("\n")[0].removeprefix("fatal: ")
        raise NoGit(f"git says: {why or 'no'}")
    return run.stdout.decode("utf-8", "surrogateescape")


def _run(*arguments: str) -> subprocess.CompletedProcess[bytes]:
    try:
        return subprocess.run(["git", *arguments], capture_output=True, check=False)
    except FileNotFoundError:
        raise NoGit("there is no program 'git' here") from None
