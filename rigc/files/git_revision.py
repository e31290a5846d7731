"""A commit of a git repository -> the sources in it, read from git's objects: neither work tree nor index is looked at."""

from __future__ import annotations

from posixpath import basename, dirname, join, normpath, relpath

from rigc.files.git_tree import BLOB, Entry, Repository
from rigc.files.reading import SIZE_LIMIT, decode, read_source
from rigc.loader import STOCK, Unreadable
from rigc.resources import folder
from rigc.source import Source


class GitRevision:
    """Loads the sources of the rig at `path` (from the top of the repository) as they stand in a commit.

    `typed` is what the user calls the commit. `root` is the folder, from the top too, that `use` must not leave; without
    it, the nearest one upwards that holds a file `rig-root` in that commit, else all of the repository. Each file is read once.
    """

    def __init__(self, repository: Repository, commit: str, typed: str, path: str, root: str | None = None) -> None:
        self.repository = repository
        self.commit = commit
        self.typed = typed
        self.folder = dirname(path)
        self.name = basename(path)
        self.root = self._project_root() if root is None else root
        self._sources: dict[str, Source] = {}

    def __call__(self, name: str) -> Source:
        """The source of `name`, relative to the folder of the rig. Raises `Unreadable`."""
        if name.startswith(STOCK) and ".." not in name:
            if name not in self._sources:
                self._sources[name] = read_source(folder("stock") / name.removeprefix(STOCK), name)
            return self._sources[name]
        path = normpath(join(self.folder, name))
        known = relpath(f"/{path}", f"/{self.folder}")
        if known not in self._sources:
            self._sources[known] = self._read(path, known, name)
        return self._sources[known]

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the sources read so far, in the order in which they were."""
        return tuple(self._sources)

    def shown(self, name: str) -> str:
        """A source's name as git writes it: the commit, and the path from the top."""
        return name if name.startswith(STOCK) else f"{self.typed}:{normpath(join(self.folder, name))}"

    def _read(self, path: str, name: str, asked: str) -> Source:
        outside = path.startswith(("../", "/")) or path == ".." or "\0" in path
        if outside or (name != self.name and self.root and not path.startswith(f"{self.root}/")):
            message = f"'{asked}' lies outside the project"
            raise Unreadable(name, message, "move it into the project, or give --root a folder that holds both")
        entry = self.repository.entry(self.commit, path)
        if entry is None or entry.kind != BLOB:
            raise Unreadable(name, *self._why_not(path, name, entry))
        if entry.size > SIZE_LIMIT:
            return decode(b" " * (SIZE_LIMIT + 1), name)
        return decode(self.repository.blob(entry.digest), name, f"git:{self.repository.top}/{path}")

    def _why_not(self, path: str, name: str, entry: Entry | None) -> tuple[str, str]:
        above, part = path, entry
        while part is None and (above := dirname(above)):
            part = self.repository.entry(self.commit, above)
        if part is not None and part.is_link:
            return f"'{name}' is a link in {self.typed}, or lies behind one", "name the file itself"
        if part is not None and part.is_submodule:
            return (
                f"'{name}' lies in '{above}', another repository that {self.typed} does not hold",
                "compare it in that repository",
            )
        if part is not None and above == path:
            return f"cannot read '{name}': it is a folder in {self.typed}", "name a file in it"
        return f"cannot read '{name}': there is no such file in {self.typed}", "name it as it was called there"

    def _project_root(self) -> str:
        folders = [self.folder]
        while folders[-1]:
            folders.append(dirname(folders[-1]))
        marks = [join(each, "rig-root") for each in folders]
        held = self.repository.blobs(self.commit, marks)
        return next((each for each, mark in zip(folders, marks, strict=True) if mark in held), "")
