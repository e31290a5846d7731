"""Saved files -> rigs built again, until the user ends it. What is wrong is told, and mended by the next save."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import NoReturn

import click

from rigc.cli.screen import Screen
from rigc.files.disk import Disk

EVERY_S = 0.1
"""How often the files are looked at."""
STILL_S = 0.2
"""So long nothing must change before a build: an editor writes a file in several steps, and a checkout writes many."""

Marks = dict[Path, tuple[int, int] | None]
"""When each file was written and how long it is; None where there is none."""


def watching(
    screen: Screen,
    rigs: Sequence[Disk],
    again: Callable[[], list[Disk]],
    templates: Path | None,
    build: Callable[[Sequence[Disk]], Sequence[Disk]],
) -> NoReturn:
    """Builds all, then, whenever files change, the rigs that read them. Ends by an interrupt.

    `again` finds the rigs anew, `build` gives them as they were read.
    """
    due, known = list(rigs), {disk.typed: disk for disk in rigs}
    while True:
        before = marks(_files([*known.values(), *due], templates))
        try:
            known |= {disk.typed: disk for disk in build(due)}
        except click.ClickException as fault:
            screen.err(f"rigc: {fault.format_message()}\n")
        gc.collect()
        seen = {**marks(_files(known.values(), templates)), **before}
        screen.progress(f"watching {len(seen)} files; Ctrl-C ends\n")
        changed = next_change(seen)
        stale = {typed for typed, disk in known.items() if not changed.isdisjoint(_files([disk], templates))}
        try:
            found = again()
        except click.ClickException as fault:
            screen.err(f"rigc: {fault.format_message()}\n")
            found = []
        due = [disk for disk in found if disk.typed in stale or disk.typed not in known]


def next_change(seen: Marks) -> set[Path]:
    """Waits until a file is another than it was seen, and then until all are still; gives those that changed."""
    changed: set[Path] = set()
    now, since = seen, time.monotonic()
    while not changed or time.monotonic() - since < STILL_S:
        time.sleep(EVERY_S)
        later = marks(seen)
        if later != now:
            now, since = later, time.monotonic()
        changed = {path for path, mark in now.items() if mark != seen[path]}
    return changed


def marks(paths: Iterable[Path]) -> Marks:
    """How the files stand now."""
    found: Marks = {}
    for path in paths:
        try:
            state = path.stat()
            found[path] = (state.st_mtime_ns, state.st_size)
        except OSError:
            found[path] = None
    return found


def _files(rigs: Iterable[Disk], templates: Path | None) -> set[Path]:
    """All that was read or looked for, a file that is not there yet included."""
    own = {path for path in templates.rglob("*") if path.is_file()} if templates else set()
    return own | {path for disk in rigs for path in (disk.folder / disk.name, *disk.asked)}
