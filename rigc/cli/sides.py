"""What `diff` was told -> the two sides that it compares: files as they are, or as they stand in commits of git."""

from __future__ import annotations

from pathlib import Path
from typing import Protocol

import click

from rigc.cli.options import Given, disks
from rigc.files.disk import Disk
from rigc.files.git import NoGit
from rigc.files.git_revision import GitRevision
from rigc.files.git_tree import Repository
from rigc.source import Source


class Side(Protocol):
    """A rig and all that it uses, as they are at one time."""

    name: str

    @property
    def names(self) -> tuple[str, ...]: ...

    def __call__(self, name: str) -> Source: ...

    def shown(self, name: str) -> str: ...


def sides(words: tuple[str, ...], behind: int | None, given: Given) -> tuple[Side, Side]:
    """The old side and the new one; `behind` is how many of the words stand behind `--` (None: there is none).

    What can't be compared ends the command with exit code 2.
    """
    if behind is None:
        return _files(words, given)
    late = next((word for word in words[len(words) - behind :] if word.startswith("-")), None)
    if late is not None:
        raise click.UsageError(f"'{late}' stands behind --, where only the rig stands; options go before it")
    if behind != 1 or len(words) != 2:
        raise click.UsageError("behind -- stands one rig, and before it one revision: REV -- PATH, or REV..REV -- PATH")
    try:
        return _revisions(words[0], Path(words[1]), given)
    except NoGit as fault:
        raise click.ClickException(str(fault)) from None


def _files(words: tuple[str, ...], given: Given) -> tuple[Disk, Disk]:
    if len(words) != 2:
        raise click.UsageError("name two rigs, OLD NEW, or a revision and a rig: REV -- PATH")
    missing = next((word for word in words if word != "-" and not Path(word).exists()), None)
    if missing is not None and not missing.endswith(".rig"):
        path = next((word for word in words if word != missing), "PATH")
        raise click.UsageError(f"there is no file '{missing}'; a revision stands before --: {missing} -- {path}")
    old, new = disks(words, given)
    return old, new


def _revisions(typed: str, path: Path, given: Given) -> tuple[Side, Side]:
    """The work tree is the new side where one revision is named."""
    if "..." in typed:
        raise click.UsageError(f"'{typed}' has three dots; write two: REV..REV")
    first, dots, second = typed.partition("..")
    repository = Repository(_folder(path))
    old = repository.commit(first or "HEAD" if dots else first)
    new = repository.commit(second or "HEAD") if dots else None
    before, now = _names(repository, old, new, repository.path(path))
    root = None if given.root is None else _root(repository, given.root)
    side = GitRevision(repository, old, first or "HEAD", before, root)
    if new is None:
        return side, Disk(path, given.root)
    return side, GitRevision(repository, new, second or "HEAD", now, root)


def _folder(path: Path) -> Path:
    """The nearest folder above that is there: that of a deleted rig may be gone."""
    return next(each for each in (Path.cwd() / path).parents if each.is_dir())


def _names(repository: Repository, old: str, new: str | None, path: str) -> tuple[str, str]:
    """What the rig is called on the two sides, where a rename lies between them and the path is one of its names."""
    there = repository.entry(old, path) is not None
    here = new is None or repository.entry(new, path) is not None
    if there and here:
        return path, path
    renames = repository.renames(old, new)
    if not there:
        return renames.get(path, path), path
    return path, next((now for now, then in renames.items() if then == path), path)


def _root(repository: Repository, root: Path) -> str:
    """The folder that `use` must not leave, from the top of the repository; all of it where the folder is larger."""
    inside = repository.path(root / "x").rpartition("/")[0]
    return "" if inside == ".." or inside.startswith("../") else inside
