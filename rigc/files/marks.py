"""Files -> how they stand; and the wait until some of them stand otherwise."""

from __future__ import annotations

import time
from collections.abc import Iterable
from math import inf
from pathlib import Path

EVERY_S = 0.1
"""How often the files are looked at."""
STILL_S = 0.2
"""So long nothing must change before a build: an editor writes a file in several steps, and a checkout writes many."""

Marks = dict[Path, tuple[int, int] | None]
"""When each file was written and how long it is; None where there is none."""


def next_change(seen: Marks, still_s: float = STILL_S, most_s: float = inf) -> set[Path]:
    """Waits until a file is another than it was seen, and then until all are still for so long; gives those that changed. Where nothing
    changes for `most_s`, none."""
    changed: set[Path] = set()
    now, since = seen, time.monotonic()
    while not changed or time.monotonic() - since < still_s:
        if not changed and time.monotonic() - since >= most_s:
            return set()
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
