"""New texts of a rig's files -> the files, all or none; or a diff, or standard output, as was asked for."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from rigc.cli.report import save
from rigc.cli.screen import Screen
from rigc.files.disk import Disk


def put(screen: Screen, disk: Disk, texts: Mapping[str, str], as_diff: bool, nothing: str) -> None:
    """Write the texts, keyed by the names of their sources; `nothing` is told where they are what the files hold.

    With `as_diff` the change is printed instead; the text of standard input is always printed.
    """
    new = {name: text for name, text in texts.items() if text.encode("utf-8") != disk(name).data}
    if as_diff:
        from rigc.edit.text_diff import text_diff

        for name, text in new.items():
            screen.out(text_diff(disk.shown(name), disk(name).data.decode("utf-8"), text))
        return
    if disk.is_given and disk.name in texts:
        screen.out(texts[disk.name])
    files = {_path(disk, name): name for name in new if not (disk.is_given and name == disk.name)}
    save({path: new[name] for path, name in files.items()}, {path: disk(name).data for path, name in files.items()})
    for name in new:
        screen.progress(f"wrote {disk.shown(name)}\n" if not disk.is_given else "")
    if not new:
        screen.progress(f"{nothing}\n")


def _path(disk: Disk, name: str) -> Path:
    """The file as the user would type it, where that is the same: what goes wrong with it is told by that name."""
    shown, whole = Path(disk.shown(name)), disk.folder / name
    return shown if shown.resolve() == whole.resolve() else whole
