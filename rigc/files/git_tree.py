"""One git repository, only looked at: its commits, the entries of their trees, blobs, and which file became which."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterable
from pathlib import Path

from rigc.files.git import NoGit
from rigc.record import Record

BLOB = "blob"
_TWO_FILES = "name two files instead: rigc diff OLD.rig NEW.rig"
# Looking must take no lock, fetch nothing and ask nobody; messages are not translated.
_QUIETLY = {"GIT_OPTIONAL_LOCKS": "0", "GIT_NO_LAZY_FETCH": "1", "GIT_TERMINAL_PROMPT": "0", "LC_ALL": "C"}


class Entry(Record):
    """What a commit holds at a path: `kind` is blob, tree, commit, or `link`; `digest` names the object, `size` is in bytes."""

    kind: str
    digest: str
    size: int

    @property
    def is_link(self) -> bool:
        """Whether it is a symbolic link."""
        return self.kind == "link"

    @property
    def is_submodule(self) -> bool:
        """Whether it is another repository."""
        return self.kind == "commit"


class Repository:
    """The repository around a folder. Raises `NoGit` where there is no git program, or no repository with a work tree."""

    def __init__(self, inside: Path) -> None:
        try:
            run = self._run(inside, "rev-parse", "--show-toplevel")
        except FileNotFoundError:
            raise NoGit(f"there is no program 'git' here; {_TWO_FILES}") from None
        if run.returncode:
            why = _first_line(run.stderr)
            if "dubious ownership" in why:
                raise NoGit(
                    "git does not trust the owner of this repository; git help safe.directory says how to allow it"
                )
            raise NoGit(f"'{inside}' is in no git repository with files checked out; {_TWO_FILES}")
        self.top = Path(os.fsdecode(run.stdout.removesuffix(b"\n")))

    def commit(self, typed: str) -> str:
        """The full name of the commit that the user calls so. Raises `NoGit`."""
        odd = typed.startswith("-") or not typed.strip() or "\0" in typed
        run = None if odd else self._run(self.top, "rev-parse", "--verify", "--quiet", f"{typed}^{{commit}}")
        if run is not None and run.returncode == 0:
            return run.stdout.decode("ascii").strip()
        if not odd and self._run(self.top, "rev-parse", "--is-shallow-repository").stdout.strip() == b"true":
            raise NoGit(
                f"there is no revision '{typed}' in this shallow clone; git fetch --unshallow brings the older ones"
            )
        raise NoGit(f"there is no revision '{typed}' here; git log --oneline lists those that there are")

    def path(self, path: Path) -> str:
        """A path as git calls it, from the top of the repository; links in the folders before its last part are followed."""
        real = Path(os.path.realpath(path.parent)) / path.name
        return os.path.relpath(real, os.path.realpath(self.top)).replace(os.sep, "/")

    def entry(self, commit: str, path: str) -> Entry | None:
        """What a commit holds at a path; None for nothing."""
        return self._listed(commit, [path]).get(path)

    def blobs(self, commit: str, paths: Iterable[str]) -> frozenset[str]:
        """Those of the paths at which a commit holds a file."""
        return frozenset(path for path, entry in self._listed(commit, paths).items() if entry.kind == BLOB)

    def blob(self, digest: str) -> bytes:
        """The bytes of a file."""
        return self._asked("cat-file", "blob", digest)

    def renames(self, old: str, new: str | None) -> dict[str, str]:
        """Files by what they are called in the commit `new` (None: the work tree and index) -> what they were called in `old`."""
        form = ("-M", "--name-status", "-z", "--diff-filter=R")
        told = (
            self._asked("diff-index", *form, old, "--")
            if new is None
            else self._asked("diff-tree", "-r", *form, old, new, "--")
        )
        parts = [os.fsdecode(part) for part in told.split(b"\0")]
        return {now: then for then, now in zip(parts[1::3], parts[2::3], strict=False)}

    def _listed(self, commit: str, paths: Iterable[str]) -> dict[str, Entry]:
        found: dict[str, Entry] = {}
        for line in self._asked("ls-tree", "-z", "-l", "--full-tree", commit, "--", *paths).split(b"\0"):
            if line:
                about, _, path = line.partition(b"\t")
                mode, kind, digest, size = about.decode("ascii").split()
                kind = "link" if mode == "120000" else kind
                found[os.fsdecode(path)] = Entry(kind, digest, int(size) if size.isdigit() else 0)
        return found

    def _asked(self, *arguments: str) -> bytes:
        run = self._run(self.top, *arguments)
        if run.returncode:
            raise NoGit(f"git says: {_first_line(run.stderr) or 'no'}")
        return run.stdout

    @staticmethod
    def _run(folder: Path, *arguments: str) -> subprocess.CompletedProcess[bytes]:
        command = ["git", "--literal-pathspecs", "-C", str(folder), *arguments]
        return subprocess.run(command, capture_output=True, check=False, env={**os.environ, **_QUIETLY})


def _first_line(told: bytes) -> str:
    return told.decode("utf-8", "replace").strip().split("\n")[0].removeprefix("fatal: ")
