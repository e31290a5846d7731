"""Shelf: the texts that an editor holds, over the disk; a file whose bytes have not changed is the same `Source` as before."""

from __future__ import annotations

import os
from pathlib import Path

from rigc.files.disk import Disk
from rigc.files.reading import decode
from rigc.loader import STOCK, Loader
from rigc.resources import folder
from rigc.source import Source


class Shelf:
    """Open texts by path, absolute and without `..`; and the loader of any rig over them."""

    def __init__(self) -> None:
        self.open: dict[Path, str] = {}
        self.asked: dict[Path, set[Path]] = {}
        """By rig the files of the disk that its last loader was asked for, there or not."""
        self._sources: dict[tuple[str, str], Source] = {}

    def loader(self, rig: Path) -> Loader:
        """What loads the sources of the rig at a path as they are now: one state of them all, however long it is used."""
        disk = Disk(rig)
        self.asked[rig] = disk.asked
        texts = dict(self.open)
        found: dict[str, Source] = {}

        def load(name: str) -> Source:
            if name not in found:
                found[name] = self._kept(_source(disk, name, texts))
            return found[name]

        return load

    def _kept(self, source: Source) -> Source:
        key = (source.name, source.origin)
        before = self._sources.get(key)
        if before is not None and before.data == source.data:
            return before
        self._sources[key] = source
        return source


def path_of(rig: Path, name: str) -> Path:
    """Where the source is that the rig at a path knows by a name."""
    if name.startswith(STOCK):
        return folder("stock") / name.removeprefix(STOCK)
    return Path(os.path.normpath(rig.parent / name))


def _source(disk: Disk, name: str, texts: dict[Path, str]) -> Source:
    if name.startswith(STOCK):
        return disk(name)
    path = Path(os.path.normpath(disk.folder / name))
    known = os.path.relpath(path, disk.folder).replace(os.sep, "/")
    inside = known == disk.name or Path(os.path.realpath(path)).is_relative_to(disk.root)
    if path in texts and inside:
        return decode(texts[path].encode("utf-8", "surrogatepass"), known, str(path))
    return disk(name)
