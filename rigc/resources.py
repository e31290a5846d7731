"""Where the folders that ship with rigc are: a name -> its path, in a checkout and in an installed wheel."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def folder(name: str) -> Path:
    """The folder `grammar`, `templates` or `stock`: inside the package if it is there (wheel), else beside it (checkout).

    It only finds: a folder that is in neither place comes back as the path beside the package, and reading it fails there.
    """
    inner = PACKAGE / name
    return inner if inner.is_dir() else PACKAGE.parent / name
