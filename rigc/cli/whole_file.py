"""A file for an editing command -> its statements, or the reason why it can't be edited, told on standard error."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from rigc.loader import Unreadable
from rigc.source import Source
from rigc.syntax.nodes import File

if TYPE_CHECKING:
    from rigc.cli.report import Report
    from rigc.files.disk import Disk


def rig_files(paths: tuple[str, ...]) -> list[str]:
    """The paths, a folder replaced by all rigs below it; hidden folders are passed over."""
    found: dict[str, None] = {}
    for path in paths:
        below = _below(Path(path)) if path != "-" and Path(path).is_dir() else [path]
        found.update(dict.fromkeys(below))
    return list(found)


def whole_file(report: Report, disk: Disk) -> tuple[Source, File] | None:
    """The source that `disk` was made for and its statements; None, after its findings, if it can't be read whole."""
    from rigc.files.reader import CachedReader

    try:
        source = disk(disk.name)
    except Unreadable as fault:
        report.unreadable_file(disk, fault)
        return None
    parsed = CachedReader().parse(source)
    if not parsed.findings:
        return source, parsed.file
    report.add(disk, parsed.findings)
    report.unreadable = True
    return None


def _below(folder: Path) -> list[str]:
    rigs = (path for path in folder.rglob("*.rig") if path.is_file())
    shown = (path for path in rigs if not any(part.startswith(".") for part in path.relative_to(folder).parts))
    return sorted(path.as_posix() for path in shown)
