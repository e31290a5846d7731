"""Two texts of one file -> a unified diff that `patch` and `git apply` take."""

from __future__ import annotations

import difflib


def text_diff(name: str, old: str, new: str) -> str:
    """The diff from `old` to `new`; empty where they are equal. `name` is the file's path, with `/`."""
    lines = difflib.unified_diff(_lines(old), _lines(new), f"a/{name}", f"b/{name}")
    return "".join(line if line.endswith("\n") else f"{line}\n\\ No newline at end of file\n" for line in lines)


def _lines(text: str) -> list[str]:
    """Lines with their ends, parted at line feeds alone (`str.splitlines` knows further signs)."""
    return [f"{line}\n" for line in text.split("\n")[:-1]] + [line for line in text.split("\n")[-1:] if line]
