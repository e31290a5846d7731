"""What is kept in the user's cache folder of what this rigc makes."""

from __future__ import annotations

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.files.cache import cache
from rigc.files.told import this_rigc


def kept() -> Kept:
    """What earlier runs of this rigc have kept; nothing where there is no folder that is the user's alone."""
    store = cache()
    return NOTHING_KEPT if store.folder is None else Kept(store, this_rigc)
