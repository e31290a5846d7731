"""Layouts that a search found, kept in the user's cache by what they hang on: the board and the effort (its key), and this rigc."""

from __future__ import annotations

import json

from rigc.analysis.laying.search.known import Numbers
from rigc.files.cache import Cache


class Layouts:
    """Each as a list of whole numbers; what is anything else counts as not kept."""

    def __init__(self, cache: Cache) -> None:
        self._cache = cache

    def read(self, key: str) -> Numbers | None:
        """What this rigc kept under that key."""
        kept = self._cache.read(_name(key))
        if kept is None:
            return None
        from rigc.files.told import this_rigc

        try:
            code, found = json.loads(kept)
        except (ValueError, TypeError):
            return None
        return found if code == this_rigc() else None

    def write(self, key: str, found: Numbers) -> None:
        """In place of what another rigc kept there."""
        from rigc.files.told import this_rigc

        self._cache.write(_name(key), json.dumps([this_rigc(), found]).encode("ascii"))


def _name(key: str) -> str:
    return f"laid-{key[:24]}"
