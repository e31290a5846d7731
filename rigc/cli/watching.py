"""Saved files -> rigs built again, until the user ends it. What is wrong is told, and mended by the next save."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import NoReturn

import click

from rigc.cli.screen import Screen
from rigc.files.disk import Disk
from rigc.files.marks import marks, next_change


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


def _files(rigs: Iterable[Disk], templates: Path | None) -> set[Path]:
    """All that was read or looked for, a file that is not there yet included."""
    own = {path for path in templates.rglob("*") if path.is_file()} if templates else set()
    return own | {path for disk in rigs for path in (disk.folder / disk.name, *disk.asked)}
