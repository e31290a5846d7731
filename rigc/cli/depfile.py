"""What was built, and from what -> rules that make and ninja read, so that they build a rig again when one of its files changes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from rigc.cli.made import Made
from rigc.loader import STOCK


def depfile(made: Sequence[Made], templates: Path | None) -> str:
    """A rule for each rig: its documents, a colon, the files that they were made from. What ships with rigc is left out."""
    own = sorted(path.as_posix() for path in templates.rglob("*") if path.is_file()) if templates else []
    return "".join(_rule([path.as_posix() for path in each.texts], [*_read(each), *own]) for each in made if each.texts)


def _read(made: Made) -> list[str]:
    return [made.disk.shown(name) for name in made.disk.names if not name.startswith(STOCK)]


def _rule(targets: Iterable[str], sources: Iterable[str]) -> str:
    return f"{' '.join(map(_escaped, targets))}: {' '.join(map(_escaped, sources))}\n"


def _escaped(path: str) -> str:
    return path.replace("$", "$$").replace("#", "\\#").replace(" ", "\\ ")
