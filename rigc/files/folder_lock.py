"""Folders -> to be alone in them among all runs of rigc, for as long as a set of files is written.

The lock is on the folder itself, so that no file is left lying there; it ends with the run, however that ends.
"""

from __future__ import annotations

import errno
import os
import time
from collections.abc import Iterable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

PATIENCE_S = 20.0
"""How long another run may take before this one gives up; one writes in far less than a second."""

_BUSY = (errno.EWOULDBLOCK, errno.EACCES)


class Busy(OSError):
    """Another run is writing in the folder `filename`."""


@contextmanager
def alone_in(folders: Iterable[Path], patience_s: float | None = None) -> Iterator[bool]:
    """Holds all these folders, in an order that is the same for every run; whether rigc is surely alone in them.

    It is not sure where the system or the folder's file system has no such locks. Raises `Busy` after `patience_s` seconds,
    without a number after `PATIENCE_S`.
    """
    with ExitStack() as held:
        until = time.monotonic() + (PATIENCE_S if patience_s is None else patience_s)
        sure = [_hold(folder, until, held) for folder in sorted(set(folders))]
        yield all(sure)


def _hold(folder: Path, until: float, held: ExitStack) -> bool:
    try:
        import fcntl
    except ImportError:
        return False
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return False
    held.callback(os.close, handle)
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError as fault:
            if fault.errno not in _BUSY:
                return False
            if time.monotonic() >= until:
                raise Busy(fault.errno, "another rigc is writing there; wait until it is done", str(folder)) from None
            time.sleep(0.02)
        else:
            return True
