"""Disk: the loader of one command: names relative to the folder of the named file, nothing from outside the project."""

from __future__ import annotations

import os
from pathlib import Path, PurePosixPath
from posixpath import normpath

from rigc.files.journal import settle_for_reading
from rigc.files.reading import decode, read_source
from rigc.loader import STOCK, Unreadable
from rigc.resources import folder
from rigc.source import Source


class Disk:
    """Loads the sources of the rig at `named`. `given` holds its bytes where they came by standard input.

    `root` is the folder that `use` must not leave; without it, the project's (`project_root`). Each file is read once.
    """

    def __init__(self, named: Path, root: Path | None = None, given: bytes | None = None) -> None:
        self.folder = _folder(named)
        self.name = named.name
        self.typed = named
        self.typed_folder = PurePosixPath(named.parent.as_posix())
        self.root = _real(root or project_root(self.folder))
        self._given = given
        self._settled: set[Path] = set()
        self._sources: dict[str, Source] = {}
        self.refused = False
        """Whether a file could not be read: what is then told hangs on more than what was."""
        self.asked: set[Path] = set()
        """The files that were asked for, read or not; without those that ship with rigc."""

    def __call__(self, name: str) -> Source:
        """The source of `name`, whose own name is the one way to write its path. Raises `Unreadable`."""
        try:
            return self._source(name)
        except Unreadable:
            self.refused = True
            raise

    def _source(self, name: str) -> Source:
        if name.startswith(STOCK) and ".." not in name:
            return self._stock(name)
        path = Path(os.path.normpath(self.folder / name))
        known = os.path.relpath(path, self.folder).replace(os.sep, "/")
        self.asked.add(path)
        if known not in self._sources:
            self._sources[known] = self._read(path, known, name)
        return self._sources[known]

    @property
    def is_given(self) -> bool:
        """Whether the named file came by standard input, so that there is no file to write."""
        return self._given is not None

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the sources read so far, in the order in which they were."""
        return tuple(self._sources)

    def shown(self, name: str) -> str:
        """A source's name as the user would type it from where he stands; names not read from disk stay as they are."""
        known = name == self.name or (name in self._sources and not name.startswith(STOCK))
        return normpath(self.typed_folder / name) if known else name

    def _stock(self, name: str) -> Source:
        if name not in self._sources:
            self._sources[name] = read_source(folder("stock") / name.removeprefix(STOCK), name)
        return self._sources[name]

    def _read(self, path: Path, name: str, asked: str) -> Source:
        if name == self.name:
            return self._whole(path, name) if self._given is None else decode(self._given, name)
        if "\0" not in name and not _real(path).is_relative_to(self.root):
            if not path.exists():
                advice = f"correct the path; it counts from this file and stays in the project: {self._project}"
                raise Unreadable(name, f"cannot read '{asked}': there is no such file", advice)
            message = f"'{asked}' lies outside the project: {self._project}"
            raise Unreadable(name, message, "move it into the project, or give --root a folder that holds both")
        return self._whole(path, name)

    def _whole(self, path: Path, name: str) -> Source:
        """The file's source, once what a killed run left in its folder is made whole."""
        if path.parent not in self._settled:
            self._settled.add(path.parent)
            settle_for_reading(path.parent)
        return read_source(path, name)

    @property
    def _project(self) -> str:
        """The project's folder in words, seen from the rig's."""
        if self.root == _real(self.folder):
            return f"the folder of '{self.name}', as none above it holds .git or a file rig-root"
        return f"the folder '{os.path.relpath(self.root, _real(self.folder)).replace(os.sep, '/')}'"


def project_root(folder: Path) -> Path:
    """The nearest folder, from `folder` upwards, that holds `.git` or a file `rig-root`; else `folder` itself."""
    for candidate in (folder, *folder.parents):
        if (candidate / ".git").exists() or (candidate / "rig-root").is_file():
            return candidate
    return folder


def _folder(named: Path) -> Path:
    """The folder as typed, made absolute; links are followed only where `..` might stand behind one."""
    folder = named.parent
    return _real(folder) if ".." in folder.parts else Path.cwd() / folder


def _real(path: Path) -> Path:
    """The path without links; unlike `Path.resolve` it does not mind a circle of them."""
    return Path(os.path.realpath(path))
